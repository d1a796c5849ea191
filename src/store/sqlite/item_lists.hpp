/// The lists inside an item, which have tables of their own.
#pragma once

#include <vector>

#include <nlohmann/json.hpp>

#include "store/sqlite/session.hpp"

namespace sparewell::store::sqlite {

/// Fills constituents and price breaks of items that are in the order of their rows.
void read_item_lists(Session& session, std::vector<Row<Item>>& items);
/// Puts the lists of `item` in place of those that its row has.
void write_item_lists(Session& session, std::int64_t row, const Item& item);
void add_item_lists(nlohmann::ordered_json& object, const Item& item);

}  // namespace sparewell::store::sqlite
