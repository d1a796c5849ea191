/// Lines that were billed for the wrong patient.
#pragma once

#include <span>
#include <vector>

#include "billing/finding.hpp"
#include "billing/patient_case.hpp"

namespace sparewell::billing {

/// Names, in each finding of what was billed and not issued, the one other patient who was handed
/// the same code within `days_of_other_patient` and was not billed; nobody when there are several.
void name_other_patients(std::span<const PatientCase> cases, std::vector<BillingFinding>& findings);

/// Common practice, no source.
inline constexpr int days_of_other_patient = 3;

}  // namespace sparewell::billing
