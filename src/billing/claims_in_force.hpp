/// Which claim lines are no longer in force, and so wait for no payment.
#pragma once

#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::billing {

/// For each claim line whether it takes something back itself, was taken back, or another claim
/// stands in its place. A reversal takes back one line of the claim that it names, else of its own,
/// with the same code, side and day; of several the first by quantity and key.
[[nodiscard]] std::vector<bool> claim_lines_settled(const Clinic& clinic);

}  // namespace sparewell::billing
