#include "store/sqlite/item_lists.hpp"

#include <SQLiteCpp/Column.h>

#include "store/sqlite/fields.hpp"

namespace sparewell::store::sqlite {
namespace {

/// Calls `take(query, item)` for each row of `sql`, whose first column is the item's row. With one
/// item only its own rows are read.
template <class Take>
void for_each_part(Session& session, std::vector<Row<Item>>& items, const char* sql, Take take) {
  if (items.empty()) return;
  const auto query = session.connection.query(sql);
  query->bind(":first", items.front().id.value);
  query->bind(":last", items.back().id.value);
  auto item = items.begin();
  while (query->executeStep()) {
    const auto row = query->getColumn(0).getInt64();
    while (item != items.end() && item->id.value < row) ++item;
    if (item == items.end()) return;
    if (item->id.value == row) take(*query, item->record);
  }
}

void remove_parts(Session& session, const char* sql, std::int64_t row) {
  const auto query = session.connection.query(sql);
  query->bind(":item_id", row);
  query->exec();
}

void write_constituents(Session& session, std::int64_t row, const Item& item) {
  remove_parts(session, "DELETE FROM item_constituents WHERE item_id = :item_id", row);
  int position = 0;
  for (const auto& substance : item.constituents) {
    const auto query = session.connection.query(
        "INSERT INTO item_constituents (item_id, position, substance)"
        " VALUES (:item_id, :position, :substance)");
    query->bind(":item_id", row);
    query->bind(":position", ++position);
    query->bind(":substance", substance);
    query->exec();
  }
}

void write_price_breaks(Session& session, std::int64_t row, const Item& item) {
  remove_parts(session, "DELETE FROM item_price_breaks WHERE item_id = :item_id", row);
  int position = 0;
  for (const auto& price : item.price_breaks) {
    const auto query = session.connection.query(
        "INSERT INTO item_price_breaks"
        " (item_id, position, from_quantity, unit_cost_minor, unit_cost_currency) VALUES"
        " (:item_id, :position, :from_quantity, :unit_cost_minor, :unit_cost_currency)");
    query->bind(":item_id", row);
    query->bind(":position", ++position);
    query->bind(":from_quantity", price.from_quantity);
    query->bind(":unit_cost_minor", price.unit_cost.minor);
    query->bind(":unit_cost_currency", price.unit_cost.currency.code);
    query->exec();
  }
}

}  // namespace

void read_item_lists(Session& session, std::vector<Row<Item>>& items) {
  for_each_part(session, items,
                "SELECT item_id, substance FROM item_constituents"
                " WHERE item_id BETWEEN :first AND :last ORDER BY item_id, position",
                [](SQLite::Statement& row, Item& item) {
                  item.constituents.push_back(row.getColumn(1).getString());
                });
  for_each_part(session, items,
                "SELECT item_id, from_quantity, unit_cost_minor, unit_cost_currency"
                " FROM item_price_breaks"
                " WHERE item_id BETWEEN :first AND :last ORDER BY item_id, position",
                [](SQLite::Statement& row, Item& item) {
                  item.price_breaks.push_back(
                      {row.getColumn(1).getInt(),
                       {row.getColumn(2).getInt64(), Currency{row.getColumn(3).getString()}}});
                });
}

void write_item_lists(Session& session, std::int64_t row, const Item& item) {
  write_constituents(session, row, item);
  write_price_breaks(session, row, item);
}

void add_item_lists(nlohmann::ordered_json& object, const Item& item) {
  object["constituents"] = item.constituents;
  auto& prices = object["price_breaks"] = nlohmann::ordered_json::array();
  for (const auto& price : item.price_breaks) {
    prices.push_back(
        {{"from_quantity", price.from_quantity}, {"unit_cost", JsonWriter::json(price.unit_cost)}});
  }
}

}  // namespace sparewell::store::sqlite
