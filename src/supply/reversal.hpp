/// A booking that was a mistake, taken back by opposite movements.
#pragma once

#include <vector>

#include "clinic/stock.hpp"
#include "supply/stock_move.hpp"

namespace sparewell::supply {

/// The movements that undo `booked`, in the opposite order and with their kinds. The level that
/// would fall below zero is refused: what was moved on must be moved back first.
[[nodiscard]] tl::expected<std::vector<StockMovement>, StockLevel> reverse(
    const std::vector<StockMovement>& booked, const std::vector<StockLevel>& levels, Date on,
    const std::string& reason);

}  // namespace sparewell::supply
