/// What needs a person today on the shelf: lots, what is held back, what is away, moves.
#pragma once

#include <vector>

#include "desk/day.hpp"
#include "desk/today/today_row.hpp"

namespace sparewell::desk {

/// Expired lots, lots to be used soon, pieces in quarantine, loans, credits and transfers to be
/// settled, moves between branches.
[[nodiscard]] std::vector<TodayRow> shelf_today(const Day& day);

}  // namespace sparewell::desk
