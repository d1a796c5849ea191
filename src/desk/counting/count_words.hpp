/// Counts in words: the plan, the differences, what was booked.
#pragma once

#include <string>
#include <vector>

#include "desk/counting/count_entry.hpp"
#include "desk/table.hpp"
#include "supply/count_plan.hpp"

namespace sparewell::desk {

/// "main store  L-1  2 lots, 5 pieces, 2,060.00 EUR; never counted".
[[nodiscard]] std::string plan_line(const supply::CountCandidate& candidate);

/// "main store  L-1 lot A: 4 counted, 5 recorded, 1 fewer (-412.00 EUR)"; says when it moved.
[[nodiscard]] std::string count_line(const CountFinding& finding);

/// "Row 7, Counted: 'x' is not a number ...".
[[nodiscard]] std::string refused_count_line(const RefusedCount& refused);

/// How many agree, differ, moved, were refused or left blank, the differences in money, and whether
/// they are booked.
[[nodiscard]] std::string count_summary(const CountReview& review);

/// The differences as a table, refused rows last; a row's id is its position.
[[nodiscard]] Table count_table(const CountReview& review);

}  // namespace sparewell::desk
