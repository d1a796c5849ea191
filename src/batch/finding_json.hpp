/// What the checks find, and who is newly affected by a change, as JSON and as lines.
#pragma once

#include <string>
#include <vector>

#include "batch/json.hpp"
#include "desk/patient_findings.hpp"
#include "desk/sensitivity_work.hpp"

namespace sparewell::batch {

[[nodiscard]] Json json_of(const desk::PatientFinding& finding);
/// "P-1, left, L1: Stops. Conflict with ..."
[[nodiscard]] std::string line_of(const desk::PatientFinding& finding);

/// The path as [{"name": ...}, {"relation": ..., "name": ...}].
[[nodiscard]] Json json_of(const care::SubstancePath& path);
[[nodiscard]] Json json_of(const care::SensitivityVerdict& verdict, const Item& item);

[[nodiscard]] Json json_of(const desk::Reexamined& change, const ClinicIndex& index);

}  // namespace sparewell::batch
