/// What needs a person today in ordering and receiving: orders, deliveries and bookings.
#pragma once

#include <vector>

#include "desk/day.hpp"
#include "desk/today/today_row.hpp"

namespace sparewell::desk {

/// Orders due today by supplier, lines without money, drafts that were not sent, orders that wait
/// for approval, late orders by supplier, deliveries of the next days, bookings that cannot be
/// served.
[[nodiscard]] std::vector<TodayRow> orders_today(const Day& day);

}  // namespace sparewell::desk
