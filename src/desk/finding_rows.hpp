/// Findings as a table: of one patient, or of everyone.
#pragma once

#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/patient_findings.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

enum class FindingsOf { patient, everyone };

[[nodiscard]] std::vector<Column> finding_columns(FindingsOf of);

/// The id of a row is the position of its finding.
[[nodiscard]] std::vector<TableRow> finding_rows(const Day& day,
                                                 const std::vector<PatientFinding>& findings,
                                                 FindingsOf of);

/// "Findings", "Findings (2 to look at)": the title of the tab; notes do not count.
[[nodiscard]] std::string findings_title(const std::vector<PatientFinding>& findings);

/// "12 findings of 8 patients: 2 stop, 10 are to be asked about."; says so when there is none.
[[nodiscard]] std::string findings_summary(const std::vector<PatientFinding>& findings);

}  // namespace sparewell::desk
