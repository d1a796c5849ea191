/// Skin reactions put in on purpose: some that speak for a material, some that tell nothing.
#pragma once

#include <vector>

#include "planted.hpp"

namespace sparewell::sample {

/// Adds reactions of two patients, where the clinic has such ones: one who wore a material for a
/// part of the time and reacted while it was worn, and one who wore the same all the time.
[[nodiscard]] std::vector<Planted> plant_reactions(Clinic& clinic, Date until);

}  // namespace sparewell::sample
