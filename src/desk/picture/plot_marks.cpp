#include "desk/picture/plot_marks.hpp"

#include <algorithm>

#include "desk/picture/draw.hpp"

namespace sparewell::picture {

void add_grid(Picture& picture, const Room& room, const Area& plot,
              const std::vector<desk::Tick>& across, const std::vector<desk::Tick>& upwards) {
  Words label;
  label.across = Across::middle;
  for (const auto& tick : across) {
    add_line(picture, {tick.x, plot.top}, {tick.x, plot.bottom}, Ink::faint);
    const double width = room.text_width(tick.label);
    label.at.x = std::min(tick.x, room.width - width / 2 - 2 * room.unit);
    // Labels lie a quarter of their width apart at least.
    if (tick.x - label.at.x > width / 4) continue;
    label.at.y = plot.bottom + 4 * room.unit;
    label.text = tick.label;
    add_words(picture, label);
  }
  label.across = Across::right;
  label.down = Down::middle;
  for (const auto& tick : upwards) {
    add_line(picture, {plot.left, tick.x}, {plot.right, tick.x}, Ink::faint);
    label.at = {plot.left - 6 * room.unit, tick.x};
    label.text = tick.label;
    add_words(picture, label);
  }
}

}  // namespace sparewell::picture
