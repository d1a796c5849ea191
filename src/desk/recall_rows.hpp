/// A recall as a screen lists it: everyone and everything that it touches.
#pragma once

#include "desk/recall_words.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

/// Patients with a part in hands first, then those who had one, shelves, and open orders; a row's
/// id is its position.
[[nodiscard]] Table recall_table();
[[nodiscard]] std::vector<TableRow> recall_rows(const RecallNotice& notice, Names names);

/// The catalogue, to find the recalled item in; a row's id is the item's code.
[[nodiscard]] Table item_table(const std::vector<Item>& items);

}  // namespace sparewell::desk
