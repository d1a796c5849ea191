/// The list of proposed moves on the page "Shelf", and what is asked before they are sent.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/stock_form.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

[[nodiscard]] std::vector<Column> move_columns();
[[nodiscard]] std::vector<TableRow> move_rows(const Day& day);
/// By the id of its row; nullptr when it is no longer proposed. Refers to the day.
[[nodiscard]] const supply::RestockMove* find_move(const Day& day, const std::string& id);
/// Asks whether the chosen move or all of them are sent. Precondition: there is a move.
[[nodiscard]] StockForm send_form(const Day& day, const supply::RestockMove& chosen);

}  // namespace sparewell::desk
