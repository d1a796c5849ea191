#include "store/sqlite/of_item.hpp"

#include "store/sqlite/records/catalogue.hpp"
#include "store/sqlite/records/papers.hpp"
#include "store/sqlite/records/people.hpp"
#include "store/sqlite/records/units.hpp"
#include "store/sqlite/table_access.hpp"

namespace sparewell::store::sqlite {
namespace {

/// The rows for which `condition`, which names :text, holds.
template <class Record>
std::vector<Row<Record>> rows_where(Session& session, const char* condition,
                                    const std::string& text) {
  const auto query = session.connection.query(
      fmt::format("{} WHERE {} ORDER BY id", select_sql<Record>(), condition));
  query->bind(":text", text);
  return rows_of<Record>(session, *query);
}

template <class Record>
std::optional<Row<Record>> only_row(std::vector<Row<Record>> rows) {
  if (rows.empty()) return std::nullopt;
  return std::move(rows.front());
}

constexpr const char* of_item = "item_id = (SELECT id FROM items WHERE code = :text)";

}  // namespace

std::optional<Row<Item>> find_item(Session& session, const ItemCode& code) {
  return only_row(rows_where<Item>(session, "code = :text", code.text));
}

std::optional<Row<Patient>> find_patient(Session& session, const PatientRef& ref) {
  return only_row(rows_where<Patient>(session, "ref = :text", ref.text));
}

std::vector<Row<Unit>> find_units(Session& session, const ItemCode& item) {
  return rows_where<Unit>(session, of_item, item.text);
}

std::vector<Row<OrderLine>> find_order_lines(Session& session, const ItemCode& item) {
  return rows_where<OrderLine>(session, of_item, item.text);
}

std::vector<Row<OrderLine>> find_lines_of_order(Session& session, const std::string& order_ref) {
  return rows_where<OrderLine>(session, "order_ref = :text", order_ref);
}

}  // namespace sparewell::store::sqlite
