/// Records that people know by a number: loans and returns to suppliers.
#pragma once

#include <optional>

#include "store/sqlite/table_access.hpp"

namespace sparewell::store::sqlite {

template <class Record>
std::optional<Row<Record>> find_numbered(Session& session, int number) {
  static const std::string sql = select_sql<Record>() + " WHERE number = :number";
  const auto query = session.connection.query(sql);
  query->bind(":number", number);
  auto rows = rows_of<Record>(session, *query);
  if (rows.empty()) return std::nullopt;
  return std::move(rows.front());
}

/// 0 when there is none.
template <class Record>
int last_number(Session& session) {
  static const std::string sql =
      fmt::format("SELECT IFNULL(MAX(number), 0) FROM {}", Table<Record>::name);
  const auto query = session.connection.query(sql);
  query->executeStep();
  return query->getColumn(0).getInt();
}

}  // namespace sparewell::store::sqlite
