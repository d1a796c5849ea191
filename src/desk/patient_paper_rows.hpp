/// The papers of one patient's parts: what is on record, and what is not.
#pragma once

#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

[[nodiscard]] std::vector<Column> paper_columns();

/// A row for each part, in use or not, the latest first; a row's id is the position in
/// Clinic::units.
[[nodiscard]] std::vector<TableRow> paper_rows(const Day& day, const PatientRef& patient);

/// How many have no proof of delivery, and where it is said which papers the payer asks for.
[[nodiscard]] std::string papers_summary(const Day& day, const PatientRef& patient);

}  // namespace sparewell::desk
