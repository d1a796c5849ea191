#include "store/sqlite/ledger.hpp"

#include <cstdlib>
#include <optional>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "store/sqlite/records/stock.hpp"
#include "store/sqlite/table_access.hpp"

namespace sparewell::store::sqlite {
namespace {

std::int64_t stock_of(Session& session, std::int64_t lot, const std::string& place) {
  static const std::string sql =
      "SELECT IFNULL(SUM(quantity), 0) FROM movements WHERE lot_id = :lot_id AND place = :place";
  const auto query = session.connection.query(sql);
  query->bind(":lot_id", lot);
  query->bind(":place", place);
  query->executeStep();
  return query->getColumn(0).getInt64();
}

void check_enough(const StockMovement& movement, std::int64_t on_hand) {
  if (movement.quantity > 0 || on_hand + movement.quantity >= 0) return;
  throw StoreFailure{StoreError::constraint,
                     say("Only {} of item {}, lot \"{}\", are at {}; {} cannot leave it.", on_hand,
                         movement.lot.item.text, movement.lot.lot, movement.place,
                         -static_cast<std::int64_t>(movement.quantity))};
}

void check_serials(const StockMovement& movement) {
  const auto serials = static_cast<std::int64_t>(movement.serials.size());
  if (serials <= std::abs(static_cast<std::int64_t>(movement.quantity))) return;
  throw StoreFailure{StoreError::constraint,
                     say("{} serial numbers do not fit a movement of {} pieces.", serials,
                         std::abs(movement.quantity))};
}

void insert_serials(WriteSession& session, std::int64_t movement,
                    const std::vector<std::string>& serials) {
  int position = 0;
  for (const auto& serial : serials) {
    const auto query = session.connection.query(
        "INSERT INTO movement_serials (movement_id, position, serial)"
        " VALUES (:movement_id, :position, :serial)");
    query->bind(":movement_id", movement);
    query->bind(":position", ++position);
    query->bind(":serial", serial);
    query->exec();
  }
}

/// Puts the serial numbers that `query` reads to their movements; both in the order of the rows.
void read_serials(SQLite::Statement& query, std::vector<Row<StockMovement>>& movements) {
  auto movement = movements.begin();
  while (query.executeStep()) {
    const auto row = query.getColumn(0).getInt64();
    while (movement != movements.end() && movement->id.value < row) ++movement;
    if (movement == movements.end()) return;
    if (movement->id.value == row) {
      movement->record.serials.push_back(query.getColumn(1).getString());
    }
  }
}

void insert_movement(WriteSession& session, std::int64_t lot, const StockMovement& movement) {
  static const std::string sql =
      "INSERT INTO movements (change_set_id, lot_id, place, kind, quantity, moved_on, reason)"
      " VALUES (:change_set_id, :lot_id, :place, :kind, :quantity, :moved_on, :reason)";
  const auto set = session.log.change_set();
  {
    const auto query = session.connection.query(sql);
    query->bind(":change_set_id", set);
    query->bind(":lot_id", lot);
    Binder binder{*query, session.references};
    binder("place", movement.place);
    binder("kind", movement.kind);
    binder("quantity", movement.quantity);
    binder("moved_on", movement.on);
    binder("reason", movement.reason);
    query->exec();
  }
  const auto row = session.connection.database().getLastInsertRowid();
  session.log.added(Table<StockMovement>::subject.word, row);
  insert_serials(session, row, movement.serials);
}

template <class Record>
std::vector<Record> records_of(Session& session, SQLite::Statement& query) {
  std::vector<Record> records;
  for (auto& row : rows_of<Record>(session, query)) records.push_back(std::move(row.record));
  return records;
}

template <class Record>
std::vector<Record> in_order(Session& session, const char* order) {
  static const std::string sql = select_sql<Record>() + " ORDER BY " + order;
  const auto query = session.connection.query(sql);
  return records_of<Record>(session, *query);
}

/// The movements that `condition`, a WHERE clause or "", allows.
template <class Bind>
std::vector<StockMovement> movements_where(Session& session, const std::string& condition,
                                           const Bind& bind) {
  std::vector<Row<StockMovement>> rows;
  {
    const auto query =
        session.connection.query(select_sql<StockMovement>() + condition + " ORDER BY id");
    bind(*query);
    rows = rows_of<StockMovement>(session, *query);
  }
  {
    const auto of_these = condition.empty()
                              ? ""
                              : fmt::format(" WHERE movement_id IN (SELECT id FROM {}{})",
                                            Table<StockMovement>::name, condition);
    const auto query = session.connection.query("SELECT movement_id, serial FROM movement_serials" +
                                                of_these + " ORDER BY movement_id, position");
    bind(*query);
    read_serials(*query, rows);
  }
  std::vector<StockMovement> movements;
  movements.reserve(rows.size());
  for (auto& row : rows) movements.push_back(std::move(row.record));
  return movements;
}

}  // namespace

std::optional<std::int64_t> find_lot(Session& session, const Lot& lot) {
  static const std::string sql =
      "SELECT id FROM lots WHERE item_id = :item_id AND lot = :lot"
      " AND IFNULL(use_by, '') = IFNULL(:use_by, '')";
  const auto query = session.connection.query(sql);
  Binder binder{*query, session.references};
  Table<Lot>::describe(binder, lot);
  if (!query->executeStep()) return std::nullopt;
  return query->getColumn(0).getInt64();
}

void append_movement(WriteSession& session, const StockMovement& movement) {
  if (movement.quantity == 0) {
    throw StoreFailure{StoreError::constraint,
                       said("A stock movement of zero pieces is not recorded.")};
  }
  check_serials(movement);
  if (const auto lot = find_lot(session, movement.lot)) {
    check_enough(movement, stock_of(session, *lot, movement.place));
    all_or_nothing(session, [&] {
      insert_movement(session, *lot, movement);
      return *lot;
    });
    return;
  }
  check_enough(movement, 0);
  all_or_nothing(session, [&] {
    const auto lot = add_record(session, movement.lot);
    insert_movement(session, lot.value, movement);
    return lot;
  });
}

std::vector<StockMovement> all_movements(Session& session) {
  return movements_where(session, "", [](SQLite::Statement&) {});
}

std::vector<StockMovement> movements_of_lot(Session& session, const ItemCode& item,
                                            const std::string& lot) {
  return movements_where(
      session, " WHERE item_id = (SELECT id FROM items WHERE code = :code) AND lot = :lot",
      [&](SQLite::Statement& query) {
        query.bind(":code", item.text);
        query.bind(":lot", lot);
      });
}

std::vector<StockMovement> movements_of_kind(Session& session, MovementKind kind) {
  return movements_where(session, " WHERE kind = :kind", [&](SQLite::Statement& query) {
    query.bind(":kind", std::string{word(kind)});
  });
}

std::vector<StockMovement> movements_of_serial(Session& session, const ItemCode& item,
                                               const std::string& serial) {
  static const std::string sql =
      "SELECT movements.id, item_id, lot, use_by, place, kind, quantity, moved_on, reason"
      " FROM movement_serials JOIN movements ON movements.id = movement_id"
      " JOIN lots ON lots.id = lot_id"
      " WHERE serial = :serial AND item_id = (SELECT id FROM items WHERE code = :code)"
      " ORDER BY movements.id";
  const auto query = session.connection.query(sql);
  query->bind(":serial", serial);
  query->bind(":code", item.text);
  auto made = records_of<StockMovement>(session, *query);
  for (StockMovement& movement : made) movement.serials = {serial};
  return made;
}

std::vector<StockLevel> current_shelf(Session& session) {
  return in_order<StockLevel>(session, "id, place");
}

std::vector<StockLevel> shelf_of_item(Session& session, const ItemCode& item) {
  // Not through the view, which would be summed for every item first.
  static const std::string sql =
      "SELECT lots.id, item_id, lot, use_by, place, SUM(quantity)"
      " FROM lots JOIN movements ON lot_id = lots.id"
      " WHERE item_id = (SELECT id FROM items WHERE code = :code)"
      " GROUP BY lots.id, place HAVING SUM(quantity) <> 0 ORDER BY lots.id, place";
  const auto query = session.connection.query(sql);
  query->bind(":code", item.text);
  return records_of<StockLevel>(session, *query);
}

}  // namespace sparewell::store::sqlite
