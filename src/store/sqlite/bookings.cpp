#include "store/sqlite/bookings.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "store/sqlite/records/stock.hpp"
#include "store/sqlite/table_access.hpp"

namespace sparewell::store::sqlite {
namespace {

std::vector<StockMovement> movements_of_set(Session& session, RowId set) {
  static const std::string sql =
      "SELECT movements.id, item_id, lot, use_by, place, kind, quantity, moved_on, reason"
      " FROM movements JOIN lots ON lots.id = lot_id WHERE change_set_id = :id"
      " ORDER BY movements.id";
  const auto query = session.connection.query(sql);
  query->bind(":id", set.value);
  std::vector<StockMovement> made;
  for (auto& row : rows_of<StockMovement>(session, *query)) made.push_back(std::move(row.record));
  return made;
}

}  // namespace

std::optional<Booking> find_booking(Session& session, RowId id) {
  Booking booking{id, {}, {}, {}, movements_of_set(session, id), false, {}};
  if (booking.movements.empty()) return std::nullopt;
  static const std::string sql =
      "SELECT who, at, why,"
      " EXISTS (SELECT 1 FROM changes WHERE change_set_id = change_sets.id"
      "         AND record_kind NOT IN ('movement', 'lot', 'place')),"
      " (SELECT change_set_id FROM reversals WHERE reversed_set_id = change_sets.id)"
      " FROM change_sets WHERE id = :id";
  const auto query = session.connection.query(sql);
  query->bind(":id", id.value);
  query->executeStep();
  booking.who = query->getColumn(0).getString();
  booking.at = query->getColumn(1).getString();
  booking.why = query->getColumn(2).getString();
  booking.wrote_more = query->getColumn(3).getInt() != 0;
  if (!query->isColumnNull(4)) booking.reversed_by = RowId{query->getColumn(4).getInt64()};
  return booking;
}

std::vector<Booking> newest_bookings(Session& session, const ItemCode& item, int most) {
  static const std::string sql =
      "SELECT DISTINCT change_set_id FROM movements"
      " WHERE lot_id IN (SELECT lots.id FROM lots JOIN items ON items.id = item_id"
      "                  WHERE code = :code)"
      " ORDER BY change_set_id DESC LIMIT :most";
  std::vector<RowId> sets;
  {
    const auto query = session.connection.query(sql);
    query->bind(":code", item.text);
    query->bind(":most", std::max(most, 0));
    while (query->executeStep()) sets.push_back({query->getColumn(0).getInt64()});
  }
  std::vector<Booking> made;
  for (const RowId set : sets) {
    if (auto booking = find_booking(session, set)) made.push_back(std::move(*booking));
  }
  return made;
}

void note_reversal(WriteSession& session, RowId booking) {
  if (!find_booking(session, booking)) {
    throw StoreFailure{StoreError::not_found,
                       say("There is no booking {} in the ledger.", booking.value)};
  }
  const auto set = session.log.change_set();
  {
    const auto query = session.connection.query(
        "INSERT INTO reversals (reversed_set_id, change_set_id) VALUES (:reversed, :set)");
    query->bind(":reversed", booking.value);
    query->bind(":set", set);
    query->exec();
  }
  session.log.added("reversal", session.connection.database().getLastInsertRowid());
}

}  // namespace sparewell::store::sqlite
