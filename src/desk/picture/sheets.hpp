/// A picture laid out on sheets of paper.
#pragma once

#include <vector>

#include "desk/picture/picture.hpp"

namespace sparewell::picture {

/// A part of a picture from one of its heights to another, at a height of the sheet.
struct Piece {
  Picture picture;
  double from = 0;
  double to = 0;
  double at = 0;
};
using Sheet = std::vector<Piece>;

/// Its title, the picture, and its words below. What is higher than a sheet goes on on the next,
/// under the same fixed top, and is parted between stops where there are any.
[[nodiscard]] std::vector<Sheet> sheets_of(const Picture& picture, const Room& room, double height);

/// Sentences broken into lines of this width.
[[nodiscard]] std::vector<std::string> wrapped(const std::string& text, const Room& room,
                                               double width);

}  // namespace sparewell::picture
