#include "desk/picture/time_marks.hpp"

#include <algorithm>

#include "desk/picture/draw.hpp"

namespace sparewell::picture {
namespace {

/// Two short strokes across the end say that the stretch goes on beyond the axis.
void add_cut(Picture& picture, const Room& room, double x, double middle, double thickness) {
  for (const double shift : {-5.0, -9.0}) {
    add_line(picture, {x + shift * room.unit, middle + thickness / 2},
             {x + (shift + 3) * room.unit, middle - thickness / 2}, Ink::paper, 2);
  }
}

}  // namespace

desk::StripMeasures strip_measures(const Room& room, const std::vector<std::string>& labels,
                                   double top) {
  desk::StripMeasures measures;
  measures.width = room.width;
  measures.row_height = room.line_height + 8 * room.unit;
  measures.axis_height = top + room.line_height + 10 * room.unit;
  measures.tick_label_width = room.text_width("Mmm 0000");
  // Letters come out up to a twentieth wider at other scales than they were measured.
  for (const auto& label : labels) {
    measures.label_width =
        std::max(measures.label_width, 1.05 * room.text_width(label) + 24 * room.unit);
  }
  measures.label_width = std::min(measures.label_width, measures.width * 0.4);
  return measures;
}

void add_axis(Picture& picture, const Room& room, const std::vector<desk::Tick>& ticks,
              double axis_height, double bottom, double today) {
  for (const auto& tick : ticks) {
    add_line(picture, {tick.x, axis_height - 4 * room.unit}, {tick.x, bottom}, Ink::faint);
    const double half = room.text_width(tick.label) / 2;
    if (tick.x + half > room.width) continue;
    add_words(picture, {{tick.x, axis_height - 7 * room.unit},
                        tick.label,
                        Across::middle,
                        Down::bottom,
                        Ink::text,
                        false,
                        0});
  }
  add_line(picture, {today, axis_height - 4 * room.unit}, {today, bottom}, Ink::text, 2);
}

void add_strip_label(Picture& picture, const Room& room, const desk::StripMeasures& measures,
                     const std::string& label, double top) {
  add_words(picture, {{14 * room.unit, top + measures.row_height / 2},
                      label,
                      Across::left,
                      Down::middle,
                      Ink::text,
                      false,
                      measures.label_width - 22 * room.unit});
}

void add_heading(Picture& picture, const Room& room, const desk::StripMeasures& measures,
                 const std::string& heading, double top) {
  const double left = 6 * room.unit;
  // Bold letters are wider than the room's.
  const double right = std::min(left + 1.15 * room.text_width(heading), measures.width);
  picture.marks.emplace_back(
      Box{{left, top + 2 * room.unit, right, top + measures.row_height - 2 * room.unit},
          Ink::paper,
          Fill::solid,
          Line::none,
          1,
          0});
  add_words(picture, {{left, top + measures.row_height / 2},
                      heading,
                      Across::left,
                      Down::middle,
                      Ink::text,
                      true,
                      measures.width - 2 * left});
}

void add_past(Picture& picture, const Room& room, const desk::Stretch& past, double middle,
              double thickness) {
  picture.marks.emplace_back(Box{
      {past.from, middle - thickness / 2, std::max(past.from + 1, past.to), middle + thickness / 2},
      Ink::past,
      Fill::solid,
      Line::none,
      1,
      0});
  if (past.cut_from) add_cut(picture, room, past.from + 14 * room.unit, middle, thickness);
}

void add_ahead(Picture& picture, const Room& room, const desk::Stretch& ahead, double middle,
               double thickness) {
  picture.marks.emplace_back(Box{{ahead.from, middle - thickness / 2,
                                  std::max(ahead.from + 2, ahead.to), middle + thickness / 2},
                                 Ink::ahead,
                                 Fill::hatched,
                                 Line::solid,
                                 1.5,
                                 0});
  if (ahead.cut_to) add_cut(picture, room, ahead.to, middle, thickness + 2 * room.unit);
}

Area row_area(const desk::StripMeasures& measures, double top) {
  return {1, top, measures.width - 1, top + measures.row_height};
}

}  // namespace sparewell::picture
