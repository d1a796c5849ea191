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
/// One that ended early for no recorded reason may have been made up for as late as this, when the
/// next pieces were handed out anyway.
inline constexpr int days_to_make_up = 365;

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

/// Further parts, taken to make up for those that ended for no recorded reason within
/// `days_to_make_up` of their issue and that nothing has replaced: the first ones handed out later,
/// within `days_to_make_up`, that replace no other.
[[nodiscard]] std::vector<Replacement> made_up_later(const Clinic& clinic, const ClinicIndex& index,
                                                     std::span<const std::size_t> units,
                                                     std::span<const Replacement> replacements);

/// Whether the part ended within so many days of its issue for a reason that tells nothing.
[[nodiscard]] bool ended_unexplained(const Unit& unit, int within_days);

/// Parts replaced within the payer's `early` days whose end has no reason, while no paper "reason"
/// of the new part is on file.
void find_replaced_early(const BookRules& rules, const PatientCase& one,
                         std::span<const Replacement> replacements, FindingList& found);

}  // namespace sparewell::billing
