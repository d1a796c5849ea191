/// Reading and writing of whole records, the same for every type.
#pragma once

#include <vector>

#include <SQLiteCpp/Savepoint.h>

#include "clinic/say.hpp"
#include "store/sqlite/item_lists.hpp"
#include "store/sqlite/session.hpp"
#include "store/sqlite/table.hpp"

namespace sparewell::store::sqlite {

template <class Record>
inline constexpr bool has_lists = std::is_same_v<Record, Item>;

template <class Record>
inline constexpr bool is_referred_to =
    std::is_same_v<Record, Item> || std::is_same_v<Record, Supplier> ||
    std::is_same_v<Record, Patient>;

/// The rows that a bound `query` yields; its first column is the row's id.
template <class Record>
std::vector<Row<Record>> rows_of(Session& session, SQLite::Statement& query) {
  std::vector<Row<Record>> rows;
  while (query.executeStep()) {
    auto& row = rows.emplace_back();
    row.id.value = query.getColumn(0).getInt64();
    Reader reader{query, session.references, 1};
    Table<Record>::describe(reader, row.record);
  }
  if constexpr (has_lists<Record>) read_item_lists(session, rows);
  return rows;
}

/// Every record, in the order of their rows.
template <class Record>
std::vector<Row<Record>> read_all(Session& session) {
  static const std::string sql = select_sql<Record>() + " ORDER BY id";
  const auto query = session.connection.query(sql);
  return rows_of<Record>(session, *query);
}

/// Throws StoreFailure{not_found} when there is no such row.
template <class Record>
Record read_one(Session& session, RowId id) {
  static const std::string sql = select_sql<Record>() + " WHERE id = :id";
  const auto query = session.connection.query(sql);
  query->bind(":id", id.value);
  auto rows = rows_of<Record>(session, *query);
  if (rows.empty()) {
    throw StoreFailure{StoreError::not_found,
                       say("This {} is no longer in the clinic file; read it again.",
                           Table<Record>::subject.shown_word())};
  }
  return std::move(rows.front().record);
}

template <class Record>
nlohmann::ordered_json as_json(const Record& record) {
  JsonWriter writer;
  Table<Record>::describe(writer, record);
  if constexpr (has_lists<Record>) add_item_lists(writer.object(), record);
  return std::move(writer.object());
}

/// Binds `record` to the columns of an INSERT or UPDATE and runs it.
template <class Record>
void write_columns(Session& session, SQLite::Statement& query, const Record& record) {
  Binder binder{query, session.references};
  Table<Record>::describe(binder, record);
  query.exec();
}

template <class Record>
RowId add_record(WriteSession& session, const Record& record) {
  static const std::string sql = insert_sql<Record>();
  {
    const auto query = session.connection.query(sql);
    write_columns(session, *query, record);
  }
  const auto row = session.connection.database().getLastInsertRowid();
  if constexpr (has_lists<Record>) write_item_lists(session, row, record);
  session.log.added(Table<Record>::subject.word, row);
  return {row};
}

/// A record that is already as wanted is left alone and not logged.
template <class Record>
void replace_record(WriteSession& session, RowId id, const Record& record) {
  static const std::string sql = update_sql<Record>();
  const auto before = read_one<Record>(session, id);
  if (before == record) return;
  {
    const auto query = session.connection.query(sql);
    query->bind(":id", id.value);
    write_columns(session, *query, record);
  }
  if constexpr (has_lists<Record>) write_item_lists(session, id.value, record);
  if constexpr (is_referred_to<Record>) session.references.forget();
  session.log.changed(Table<Record>::subject.word, id.value, as_json(before));
}

/// Runs `write` whole or not at all, inside the transaction that is open.
template <class Write>
auto all_or_nothing(Session& session, Write write) {
  SQLite::Savepoint savepoint{session.connection.database(), "record"};
  auto result = write();
  savepoint.release();
  return result;
}

}  // namespace sparewell::store::sqlite
