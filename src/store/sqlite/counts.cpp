#include "store/sqlite/counts.hpp"

#include "store/sqlite/ledger.hpp"
#include "store/sqlite/records/stock.hpp"
#include "store/sqlite/table_access.hpp"

namespace sparewell::store::sqlite {
namespace {

RowId insert_count(WriteSession& session, std::int64_t lot, const ShelfCountRecord& count) {
  static const std::string sql =
      "INSERT INTO counts (change_set_id, lot_id, place, counted_on, recorded, counted, counted_by,"
      " remark) VALUES (:change_set_id, :lot_id, :place, :counted_on, :recorded, :counted,"
      " :counted_by, :remark)";
  const auto set = session.log.change_set();
  {
    const auto query = session.connection.query(sql);
    query->bind(":change_set_id", set);
    query->bind(":lot_id", lot);
    Binder binder{*query, session.references};
    binder("place", count.place);
    binder("counted_on", count.on);
    binder("recorded", count.recorded);
    binder("counted", count.counted);
    binder("counted_by", count.by);
    binder("remark", count.remark);
    query->exec();
  }
  const auto row = session.connection.database().getLastInsertRowid();
  session.log.added(Table<ShelfCountRecord>::subject.word, row);
  return {row};
}

}  // namespace

void append_count(WriteSession& session, const ShelfCountRecord& count) {
  if (const auto lot = find_lot(session, count.lot)) {
    insert_count(session, *lot, count);
    return;
  }
  all_or_nothing(
      session, [&] { return insert_count(session, add_record(session, count.lot).value, count); });
}

std::vector<ShelfCountRecord> all_counts(Session& session) {
  std::vector<ShelfCountRecord> made;
  for (auto& row : read_all<ShelfCountRecord>(session)) made.push_back(std::move(row.record));
  return made;
}

}  // namespace sparewell::store::sqlite
