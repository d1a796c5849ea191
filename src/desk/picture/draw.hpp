/// Marks that pictures have in common.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "desk/picture/picture.hpp"

namespace sparewell::picture {

void add_line(Picture& picture, Spot from, Spot to, Ink ink, double width = 1,
              Line line = Line::solid);
void add_words(Picture& picture, Words words);

/// Letters come out wider than they were measured, bold ones more so.
inline constexpr double plain_spread = 1.05;
inline constexpr double strong_spread = 1.2;
/// `text` in lines of at most `width`, broken between words where that is possible.
[[nodiscard]] std::vector<std::string> lines_in(const Room& room, const std::string& text,
                                                double width, bool strong = false);

/// One entry of a key: a drawn sign and its word.
struct KeySign {
  std::string words;
  /// Draws the sign into the area, which is `key_sign_width` units wide and a line high.
  std::function<void(Picture&, const Area&)> draw;
};
inline constexpr double key_sign_width = 26;

/// A key from this height on, in as many lines as the width needs; gives the height of its end.
double add_key(Picture& picture, const Room& room, const std::vector<KeySign>& signs, double top);
/// How high that is.
[[nodiscard]] double key_height(const Room& room, const std::vector<KeySign>& signs);

[[nodiscard]] inline double middle_x(const Area& area) {
  return (area.left + area.right) / 2;
}
[[nodiscard]] inline double middle_y(const Area& area) {
  return (area.top + area.bottom) / 2;
}

}  // namespace sparewell::picture
