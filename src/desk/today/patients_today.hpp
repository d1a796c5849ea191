/// Which patients need a person today, and why.
#pragma once

#include <vector>

#include "desk/day.hpp"
#include "desk/today/today_row.hpp"

namespace sparewell::desk {

/// Patients are told one a row, up to so many of each urgency; one more row stands for the others.
inline constexpr std::size_t most_patients = 12;

/// One row a patient with everything that is found about them, the most pressing first: parts past
/// their maker's use-by date, findings to act on, visits today and within days_ahead with what
/// should be looked at, parts likely worn out before the next visit, or without a visit, parts that
/// should have been ordered and of which nothing is there or coming, reactions that last. Then what
/// is to be looked at of the other patients, and lots of which more than chance brings wore out
/// early. Looks at everyone: for a background job.
[[nodiscard]] std::vector<TodayRow> patients_today(const Day& day);

}  // namespace sparewell::desk
