/// What each sort of record adds to a patient's history.
#pragma once

#include <vector>

#include "desk/patient_history.hpp"

namespace sparewell::desk {

using History = std::vector<HistoryEntry>;

/// Prostheses and units, issued and ended.
void add_parts_history(History& history, const Day& day, const PatientRef& patient);
/// Measurements, use, sensitivities, decisions and reactions.
void add_care_history(History& history, const Day& day, const PatientRef& patient);
/// Bookings, loans and orders for the patient.
void add_supply_history(History& history, const Day& day, const PatientRef& patient);
/// Claims, payments, papers and delivery sheets.
void add_billing_history(History& history, const Day& day, const PatientRef& patient);

}  // namespace sparewell::desk
