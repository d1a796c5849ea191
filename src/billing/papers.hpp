/// Papers of parts, and proofs of delivery.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "billing/finding_list.hpp"
#include "billing/patient_case.hpp"
#include "billing/replacements.hpp"

namespace sparewell::billing {

/// A delivery sheet may take so many days to come back signed: common practice, no source.
inline constexpr int days_to_sign = 7;

/// The papers and hand-overs on record, by patient. Refers to the clinic.
class PaperFiles {
 public:
  explicit PaperFiles(const Clinic& clinic);

  [[nodiscard]] bool has(const Unit& unit, std::string_view paper) const;
  /// nullptr when nothing is recorded of how it was handed over.
  [[nodiscard]] const Handover* handover_of(const Unit& unit) const;
  /// Whether the recorded reason of a replacement is what the repair would have cost.
  [[nodiscard]] bool reason_is_cost(const Unit& unit) const;

 private:
  std::unordered_map<PatientRef, std::vector<const PartPaper*>> papers_;
  std::unordered_map<PatientRef, std::vector<const Handover*>> handovers_;
};

/// Papers that a payer asks for, of parts since papers are put on record here: of every part, and
/// of those that replace another. "cost share" is asked for where the reason is the cost of a
/// repair.
void find_missing_papers(const BookRules& rules, const PatientCase& one,
                         std::span<const Replacement> replacements, FindingList& found);

/// Visits whose delivery sheet is not recorded as signed `days_to_sign` days later: since papers
/// are put on record here, and before where the program has recorded the hand-over.
void find_missing_proofs(const BookRules& rules, const PatientCase& one, FindingList& found);

}  // namespace sparewell::billing
