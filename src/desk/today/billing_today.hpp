/// What needs a person today in billing.
#pragma once

#include <vector>

#include "desk/billing/billing_page.hpp"
#include "desk/today/today_row.hpp"

namespace sparewell::desk {

/// Findings of which somebody was asked and the day to ask again has come, findings whose answer no
/// longer stands, the other open ones by kind with their money, months that are over and not
/// closed, payments not read for long. None without compared books.
[[nodiscard]] std::vector<TodayRow> billing_today(const Day& day, const WorklistPtr& items);

/// Payments are read at least so often (our choice).
inline constexpr int usual_days_between_payments = 35;

}  // namespace sparewell::desk
