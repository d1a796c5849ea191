/// Rows of bars over an axis of days, as pictures.
#pragma once

#include <string>
#include <vector>

#include "desk/picture/picture.hpp"
#include "desk/time_axis.hpp"

namespace sparewell::picture {

/// What a chart of strips measures in a room, its axis from `top` on; labels get two fifths of the
/// width at most.
[[nodiscard]] desk::StripMeasures strip_measures(const Room& room,
                                                 const std::vector<std::string>& labels,
                                                 double top);
/// Labels over the lines that go down from the axis, and the line of today.
void add_axis(Picture& picture, const Room& room, const std::vector<desk::Tick>& ticks,
              double axis_height, double bottom, double today);
/// Left of a strip.
void add_strip_label(Picture& picture, const Room& room, const desk::StripMeasures& measures,
                     const std::string& label, double top);
/// Between strips; over lines, which would cross its letters.
void add_heading(Picture& picture, const Room& room, const desk::StripMeasures& measures,
                 const std::string& heading, double top);
/// Solid: what has been.
void add_past(Picture& picture, const Room& room, const desk::Stretch& past, double middle,
              double thickness);
/// Hatched within an outline: what is foreseen.
void add_ahead(Picture& picture, const Room& room, const desk::Stretch& ahead, double middle,
               double thickness);
/// The whole width of a row, to be pointed at.
[[nodiscard]] Area row_area(const desk::StripMeasures& measures, double top);

}  // namespace sparewell::picture
