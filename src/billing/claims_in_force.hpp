/// Which claim lines are no longer in force, and so wait for no payment.
#pragma once

#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::billing {

/// For each claim line whether it takes something back itself, was taken back wholly, or another
/// claim stands in its place (net_claims).
[[nodiscard]] std::vector<bool> claim_lines_settled(const Clinic& clinic);

}  // namespace sparewell::billing
