/// A clinician's decision that a patient may wear an item although a sensitivity speaks against it.
#pragma once

#include <string>

#include "clinic/refusal.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

struct DecisionRequest {
  std::string patient;
  std::string item;
  std::string substance;  ///< "" where one recorded sensitivity alone speaks against the item
  std::string by;         ///< the clinician
  std::string reason;
};

/// Records the decision about the verdict as it is known today, in a unit of work that the caller
/// opens and commits. Refuses an unknown patient or item, no name or reason, a substance that is
/// not recorded of the patient, and where nothing speaks against the item. Throws
/// store::StoreFailure.
[[nodiscard]] Expected<SensitivityDecision> decide(store::UnitOfWork& work,
                                                   const DecisionRequest& request, Date today);

/// Withdraws every decision in force about that patient, item and substance ("" for all substances)
/// and returns them. Refuses when there is none. Name and reason are not asked for.
[[nodiscard]] Expected<std::vector<SensitivityDecision>> withdraw(store::UnitOfWork& work,
                                                                  const DecisionRequest& request,
                                                                  Date today);

/// "B. Fern decided on 25 Nov 2026 that P-1 may wear L1 although mineral oil is recorded
/// (conflict): no reaction in a month of trial."
[[nodiscard]] std::string decision_words(const SensitivityDecision& decision);

}  // namespace sparewell::desk
