/// Which part took the place of which.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "billing/finding_list.hpp"
#include "billing/patient_case.hpp"

namespace sparewell::billing {

/// A part is taken to replace one that ended so many days before, at most: common practice, no
/// source.
inline constexpr int days_to_replacement = 60;

/// Positions in Clinic::units.
struct Replacement {
  std::size_t unit = 0;
  std::size_t predecessor = 0;
};

/// Each part with the one of the same side, billing code and kind that had ended last when it was
/// handed out; each predecessor once. `units`: of one patient, by day of issue.
[[nodiscard]] std::vector<Replacement> replacements_of(const Clinic& clinic,
                                                       const ClinicIndex& index,
                                                       std::span<const std::size_t> units);

/// Whether the part ended within so many days of its issue for a reason that tells nothing.
[[nodiscard]] bool ended_unexplained(const Unit& unit, int within_days);

/// Parts replaced within the payer's `early` days whose end has no reason, while no paper "reason"
/// of the new part is on file.
void find_replaced_early(const BookRules& rules, const PatientCase& one,
                         std::span<const Replacement> replacements, FindingList& found);

}  // namespace sparewell::billing
