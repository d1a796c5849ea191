#include <set>

#include <SQLiteCpp/Statement.h>

#include "store/engines.hpp"
#include "store/sqlite/connection.hpp"

namespace sparewell::store::test::schema_test {
namespace {

std::vector<std::vector<std::string>> rows_of(sqlite::Connection& connection,
                                              const std::string& sql) {
  SQLite::Statement query{connection.database(), sql};
  std::vector<std::vector<std::string>> rows;
  while (query.executeStep()) {
    auto& row = rows.emplace_back();
    for (int i = 0; i < query.getColumnCount(); ++i) row.push_back(query.getColumn(i).getString());
  }
  return rows;
}

/// The first columns of the indexes of a table.
std::set<std::string> indexed_first(sqlite::Connection& connection, const std::string& table) {
  std::set<std::string> columns;
  for (const auto& index :
       rows_of(connection, "SELECT name FROM pragma_index_list('" + table + "')")) {
    columns.insert(rows_of(connection, "SELECT IFNULL(name, '') FROM pragma_index_info('" +
                                           index[0] + "') WHERE seqno = 0")[0][0]);
  }
  return columns;
}

}  // namespace

TEST_CASE("every table checks the types of its columns") {
  const SqliteFile engine;
  (void)engine.open();
  sqlite::Connection connection{engine.path(), sqlite::Use::read};
  const auto tables = rows_of(connection,
                              "SELECT name, strict FROM pragma_table_list"
                              " WHERE type = 'table' AND name NOT LIKE 'sqlite_%'");
  CHECK(tables.size() == 44);
  for (const auto& table : tables) {
    CAPTURE(table[0]);
    CHECK(table[1] == "1");
  }
}

TEST_CASE("every reference is indexed and keeps its target from being removed") {
  const SqliteFile engine;
  (void)engine.open();
  sqlite::Connection connection{engine.path(), sqlite::Use::read};
  const auto references =
      rows_of(connection,
              "SELECT t.name, f.\"from\", f.on_delete FROM pragma_table_list AS t,"
              " pragma_foreign_key_list(t.name) AS f WHERE t.type = 'table' AND f.seq = 0");
  CHECK(references.size() == 48);
  for (const auto& reference : references) {
    CAPTURE(reference[0] + "." + reference[1]);
    CHECK(reference[2] == "RESTRICT");
    CHECK(indexed_first(connection, reference[0]).contains(reference[1]));
  }
}

}  // namespace sparewell::store::test::schema_test
