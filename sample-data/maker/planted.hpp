/// Disagreements and gaps put into an orderly clinic on purpose, so that there is something to
/// find.
#pragma once

#include <string>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::sample {

struct Planted {
  std::string what;       ///< for example "wrong side"
  std::string file;       ///< the file in which it shows
  std::string reference;  ///< patient, order or item
  std::string detail;
};

/// Changes claims and invoices; says what was changed.
[[nodiscard]] std::vector<Planted> plant_disagreements(Clinic& clinic, std::uint64_t seed,
                                                       Date until);

/// Leaves out a lot here and there, forgets why some parts ended early, and lets some stock expire.
[[nodiscard]] std::vector<Planted> plant_gaps(Clinic& clinic, std::uint64_t seed, Date until);

}  // namespace sparewell::sample
