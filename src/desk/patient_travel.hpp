/// Whether a patient could go away now: spares, a look at two weeks, and what is lent.
#pragma once

#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

/// What the check says of two weeks away from tomorrow on, used as usual, with what is lent.
[[nodiscard]] std::string travel_outlook(const Day& day, const PatientRef& patient);

[[nodiscard]] std::vector<Column> lent_columns();
/// Loans to the patient, those still out first.
[[nodiscard]] std::vector<TableRow> lent_rows(const Day& day, const PatientRef& patient);

}  // namespace sparewell::desk
