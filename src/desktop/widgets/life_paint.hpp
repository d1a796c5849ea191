/// How the pieces of a life strip look: system colours, and a pattern besides every colour.
#pragma once

#include <memory>

#include <wx/colour.h>
#include <wx/dcbuffer.h>

#include "desk/life_strip.hpp"

class wxGraphicsContext;
class wxWindow;

namespace sparewell::desktop {

struct StripColours {
  wxColour paper;
  wxColour text;
  wxColour faint;   ///< axis and grid
  wxColour worn;    ///< life so far
  wxColour ahead;   ///< span of the forecast
  wxColour marked;  ///< behind the chosen row
};
/// From the system's colours of lists, so that light and dark themes both work.
[[nodiscard]] StripColours strip_colours();

/// Clears the ground, and gives what is drawn with; empty when the system has nothing to draw with.
[[nodiscard]] std::unique_ptr<wxGraphicsContext> begin_drawing(wxAutoBufferedPaintDC& dc,
                                                               const wxColour& paper);

/// What a chart of strips measures in the font of `window`; labels are cut at two fifths of it.
[[nodiscard]] desk::StripMeasures strip_measures(const wxWindow& window,
                                                 const std::vector<std::string>& labels);
/// Labels over the lines that go down from an axis at the top, in the font of `window`.
void paint_axis_ticks(wxGraphicsContext& graphics, const wxWindow& window,
                      const std::vector<desk::Tick>& ticks, double axis_height, double bottom);
/// Solid.
void paint_worn(wxGraphicsContext& graphics, const StripColours& colours, const desk::Stretch& worn,
                double middle, double thickness);
/// Outlined and hatched.
void paint_ahead(wxGraphicsContext& graphics, const StripColours& colours,
                 const desk::Stretch& ahead, double middle, double thickness);
/// A diamond.
void paint_median(wxGraphicsContext& graphics, const StripColours& colours, double x, double middle,
                  double size);
/// A flag; filled when the date has passed.
void paint_order_by(wxGraphicsContext& graphics, const StripColours& colours, double x,
                    double middle, double size, bool passed);

}  // namespace sparewell::desktop
