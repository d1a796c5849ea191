/// How items and units are named on screens.
#pragma once

#include <string>

#include "clinic/item.hpp"
#include "clinic/unit.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

/// "Locking liner soft, size 28": the description and size.
[[nodiscard]] std::string item_words(const Item& item);
/// "locking liner", "liner with seal", "suspension sleeve": the kind as the trade says it.
[[nodiscard]] std::string kind_words(const Item& item);
/// "liners", "socks".
[[nodiscard]] std::string kind_plural(Kind kind);
/// "lot A12, serial 778"; "no lot recorded" when there is neither.
[[nodiscard]] std::string lot_words(const Unit& unit);

/// Cells that are ordered by their number.
/// Quantity times unit cost; "no price" without one.
[[nodiscard]] Cell cost_cell(const std::optional<Money>& unit_cost, int quantity);
[[nodiscard]] Cell count_cell(int count);
[[nodiscard]] Cell date_cell(const std::optional<Date>& date, const std::string& otherwise);

}  // namespace sparewell::desk
