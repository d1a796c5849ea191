/// How ways of ordering look in a drawing: a shape and a line of its own for each, so that nothing
/// is told by colour alone.
#pragma once

#include <cstddef>

#include <wx/geometry.h>

#include "desktop/widgets/life_paint.hpp"

namespace sparewell::desktop {

/// A disc, a diamond, a square, a triangle; `size` is half its height.
void paint_play_mark(wxGraphicsContext& graphics, const StripColours& colours, std::size_t curve,
                     double x, double y, double size);
/// Solid and thick, dashed, solid and thin, dotted.
void paint_play_line(wxGraphicsContext& graphics, const StripColours& colours, std::size_t curve,
                     const wxPoint2DDouble& from, const wxPoint2DDouble& to);
/// An empty circle around a point.
void paint_ring(wxGraphicsContext& graphics, const wxColour& colour, double x, double y,
                double radius);

}  // namespace sparewell::desktop
