/// The lives of a patient's parts as a picture.
#pragma once

#include <string>
#include <vector>

#include "desk/life_strip.hpp"
#include "desk/picture/draw.hpp"
#include "desk/picture/picture.hpp"

namespace sparewell::desk {

/// A strip for each part, under a key and an axis that stay in place; a stop's id is the entry's.
/// Its title names the patient by `reference`, so that a sheet of it cannot be taken for another's.
[[nodiscard]] picture::Maker life_picture(std::vector<StripEntry> entries, std::string reference,
                                          Date today);

/// The bars and signs of one life around this height.
void add_life(picture::Picture& picture, const picture::Room& room, const StripShape& life,
              double middle, double row_height);
/// What those bars and signs mean.
[[nodiscard]] std::vector<picture::KeySign> life_key(double unit);

}  // namespace sparewell::desk
