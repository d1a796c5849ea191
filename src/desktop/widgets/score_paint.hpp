/// How the pieces of a drawn test look: a shape for each span and a pattern for each forecaster, so
/// that nothing is told by colour alone.
#pragma once

#include "desk/backtest_chart.hpp"
#include "desktop/widgets/life_paint.hpp"

namespace sparewell::desktop {

/// A disc for the first span, a square for the second, a triangle for the third; `size` is half its
/// height.
void paint_mark(wxGraphicsContext& graphics, const StripColours& colours, std::size_t span,
                double x, double y, double size);
/// A line with an end stroke on either side.
void paint_interval(wxGraphicsContext& graphics, const StripColours& colours, double low,
                    double high, double y, double size);
/// Dashed: where marks should lie.
void paint_nominal(wxGraphicsContext& graphics, const StripColours& colours, double x, double top,
                   double bottom);
/// Ours solid, the calendar interval hatched, the one law empty.
void paint_error(wxGraphicsContext& graphics, const StripColours& colours, std::size_t forecaster,
                 double from, double to, double top, double height);

}  // namespace sparewell::desktop
