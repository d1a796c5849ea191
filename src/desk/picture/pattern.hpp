/// Fills that can be told apart without colour, as lines and dots that lie within an outline.
#pragma once

#include <utility>
#include <vector>

#include "desk/picture/picture.hpp"

namespace sparewell::picture {

/// Lines that rise to the right, `apart` from each other across the page, cut at the outline. They
/// lie on the same places whatever the outline is, so that areas beside each other join.
[[nodiscard]] std::vector<std::pair<Spot, Spot>> hatching(const std::vector<Spot>& outline,
                                                          double apart);
/// The middles of dots in staggered rows.
[[nodiscard]] std::vector<Spot> dots_within(const std::vector<Spot>& outline, double apart);

[[nodiscard]] std::vector<Spot> corners(const Area& area);

}  // namespace sparewell::picture
