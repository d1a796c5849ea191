/// What a clinician decided about a part that a sensitivity speaks against.
#pragma once

#include <optional>
#include <string>

#include "clinic/date.hpp"
#include "clinic/refs.hpp"
#include "clinic/words.hpp"

namespace sparewell {

/// What a recorded sensitivity says about an item.
enum class Verdict {
  conflict,           ///< a declared constituent is the substance, or a kind of it
  possible_conflict,  ///< it may hold it: by its material, as a residue, or as one of a group
  not_declared,       ///< what is declared does not allow an answer
  none_known,         ///< everything declared is known and none of it is related
  nothing_recorded    ///< nothing is recorded of the patient, which says nothing about the patient
};

/// That a patient may wear an item although a sensitivity is recorded. It answers the verdict that
/// was known on its day: a graver one, or the sensitivity noted anew, has to be decided again.
struct SensitivityDecision {
  PatientRef patient;
  ItemCode item;
  std::string substance;  ///< of the recorded sensitivity
  Verdict verdict = Verdict::conflict;
  Date decided_on;
  std::string decided_by;  ///< the clinician; never empty
  std::string reason;      ///< never empty
  std::optional<Date> withdrawn_on{};

  [[nodiscard]] bool in_force_on(Date day) const {
    return decided_on <= day && (!withdrawn_on || *withdrawn_on > day);
  }
  friend bool operator==(const SensitivityDecision&, const SensitivityDecision&) = default;
};

}  // namespace sparewell
