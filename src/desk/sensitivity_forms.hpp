/// What a window asks before something about sensitivities or substances is recorded.
#pragma once

#include "desk/day.hpp"
#include "desk/patient_findings.hpp"
#include "desk/stock_form.hpp"

namespace sparewell::desk {

/// To decide that the part may be worn, or to withdraw such a decision, by what `finding` says.
[[nodiscard]] StockForm decision_form(const Day& day, const PatientFinding& finding);

/// To record a sensitivity of the patient.
[[nodiscard]] StockForm sensitivity_form(const Day& day, const PatientRef& patient);

/// To change what an item declares.
[[nodiscard]] StockForm constituents_form(const Day& day, const ItemCode& item);

/// To note how two substances are related.
[[nodiscard]] StockForm relation_form(const Day& day);

}  // namespace sparewell::desk
