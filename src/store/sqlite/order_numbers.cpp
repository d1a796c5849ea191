#include "store/sqlite/order_numbers.hpp"

#include <SQLiteCpp/Column.h>
#include <fmt/format.h>

namespace sparewell::store::sqlite {
namespace {

std::int64_t last_number(Session& session, int year) {
  const auto query = session.connection.query(
      "SELECT IFNULL(MAX(number), 0) FROM order_numbers WHERE year = :year");
  query->bind(":year", year);
  query->executeStep();
  return query->getColumn(0).getInt64();
}

bool is_in_use(Session& session, const std::string& order_ref) {
  const auto query = session.connection.query(
      "SELECT EXISTS (SELECT 1 FROM order_lines WHERE order_ref = :order_ref)");
  query->bind(":order_ref", order_ref);
  query->executeStep();
  return query->getColumn(0).getInt() != 0;
}

void keep(WriteSession& session, int year, std::int64_t number) {
  const auto set = session.log.change_set();
  {
    const auto query = session.connection.query(
        "INSERT INTO order_numbers (change_set_id, year, number)"
        " VALUES (:change_set_id, :year, :number)");
    query->bind(":change_set_id", set);
    query->bind(":year", year);
    query->bind(":number", number);
    query->exec();
  }
  session.log.added("order number", session.connection.database().getLastInsertRowid());
}

}  // namespace

std::string next_order_number(WriteSession& session, int year) {
  auto number = last_number(session, year);
  std::string text;
  do {
    text = fmt::format("SW-{:04}-{:04}", year, ++number);
  } while (is_in_use(session, text));  // imported orders may bear such numbers
  keep(session, year, number);
  return text;
}

}  // namespace sparewell::store::sqlite
