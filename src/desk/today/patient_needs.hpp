/// Everything that needs a person about each patient, gathered in one pass over the clinic.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/today/today_row.hpp"

namespace sparewell::desk {

/// One reason in a few words.
struct PatientReason {
  Urgency urgency = Urgency::this_week;
  std::string words;
  bool finding = false;             ///< of the checks; otherwise about `unit`, or the patient
  std::optional<std::size_t> unit;  ///< position in Clinic::units
};

struct PatientNeeds {
  PatientRef patient;
  std::optional<Date> visit;           ///< today or later
  std::vector<PatientReason> reasons;  ///< the most urgent first; what is found at a visit included
  /// What the checks want to be looked at, where no visit within days_ahead gives the occasion.
  int to_look_at = 0;

  [[nodiscard]] Urgency urgency() const { return reasons.front().urgency; }
};

/// Patients with a reason, or something to look at, in the order of the clinic's patients.
[[nodiscard]] std::vector<PatientNeeds> patient_needs(const Day& day);

}  // namespace sparewell::desk
