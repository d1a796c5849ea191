/// How long a part that is about to be handed over is expected to last with its patient.
#pragma once

#include <functional>
#include <optional>

#include "desk/assessment.hpp"
#include "desk/issue_check.hpp"

namespace sparewell::desk {

/// What the forecast reads of one patient; their history alone tells of their multiplier.
[[nodiscard]] Clinic of_patient(const Clinic& clinic, const PatientRef& patient);

/// Answers for a question; empty where nothing is known of its patient or item.
using ExpectedWear = std::function<std::optional<int>(const IssueQuestion&)>;

/// Days from the assessment's day by which the part is worn out with a chance of one half: by the
/// fitted law of its item, the patient's usage and their own multiplier (wear/unit_life). It is
/// taken to replace the part of its kind that the patient has worn longest on that side, so that it
/// has that part's share of the time. Empty for a patient or an item that the assessment does not
/// know, and where the day lies more than a hundred years ahead.
[[nodiscard]] std::optional<int> expected_days(const Assessment& assessment,
                                               const IssueQuestion& question);

}  // namespace sparewell::desk
