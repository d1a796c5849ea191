/// How many pieces a payer allows.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "billing/finding_list.hpp"
#include "billing/patient_case.hpp"

namespace sparewell::billing {

/// A rule on quantity beside what it counts.
struct Counted {
  const PayerRule* rule = nullptr;
  int allowed = 0;
  int had = 0;
  std::vector<std::size_t> units = {};  ///< of those that it counts, the records
  [[nodiscard]] int over() const { return had - allowed; }
};

/// What counts on one day against the rules "at once" (pieces of the code in use on the side at the
/// end of the day) and "in period" (pieces issued within the rule's days up to that day), with
/// `more` pieces that are not in `units`. `units`: of one patient.
[[nodiscard]] std::vector<Counted> count_limits(const Clinic& clinic, const ClinicIndex& index,
                                                const RuleBook& rules,
                                                std::span<const std::size_t> units, Side side,
                                                const std::string& code, const std::string& payer,
                                                Date day, int more = 0);

/// Once for each day on which pieces beyond a limit were handed out; and codes for a first part
/// that are billed again for the same prosthesis.
void find_over_limit(const BookRules& rules, const PatientCase& one, FindingList& found);

}  // namespace sparewell::billing
