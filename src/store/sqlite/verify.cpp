#include "store/sqlite/verify.hpp"

#include <SQLiteCpp/Column.h>

#include "clinic/say.hpp"
#include "store/sqlite/copy.hpp"
#include "store/sqlite/failure.hpp"
#include "store/sqlite/settings.hpp"
#include "store/sqlite/snapshot.hpp"

namespace sparewell::store::sqlite {
namespace {

using Findings = std::vector<std::string>;

Findings negative_stock(Session& session) {
  const auto query = session.connection.query(
      "WITH running AS (SELECT id, lot_id, place, SUM(quantity) OVER"
      " (PARTITION BY lot_id, place ORDER BY id) AS level FROM movements)"
      " SELECT code, lot, place, MIN(level) FROM running"
      " JOIN lots ON lots.id = lot_id JOIN items ON items.id = item_id"
      " WHERE level < 0 GROUP BY lot_id, place ORDER BY lot_id, place");
  Findings found;
  while (query->executeStep()) {
    found.push_back(
        say("The ledger of item {}, lot \"{}\", at {} falls to {}; count that lot and correct it.",
            query->getColumn(0).getString(), query->getColumn(1).getString(),
            query->getColumn(2).getString(), query->getColumn(3).getInt64()));
  }
  return found;
}

/// A number may stand on several lines of one order, never on orders to two suppliers.
Findings reused_order_numbers(Session& session) {
  const auto query = session.connection.query(
      "SELECT printf('SW-%04d-%04d', year, number) AS ref, COUNT(*)"
      " FROM order_numbers GROUP BY year, number HAVING COUNT(*) > 1"
      " UNION ALL"
      " SELECT order_ref, COUNT(DISTINCT supplier_id) FROM order_lines"
      " WHERE order_ref IN (SELECT printf('SW-%04d-%04d', year, number) FROM order_numbers)"
      " GROUP BY order_ref HAVING COUNT(DISTINCT supplier_id) > 1");
  Findings found;
  while (query->executeStep()) {
    found.push_back(
        say("Order number {} was used {} times; ask the suppliers which order "
            "they hold under it.",
            query->getColumn(0).getString(), query->getColumn(1).getInt64()));
  }
  return found;
}

Findings unreadable_settings(Session& session) {
  (void)read_settings(session);
  return {};
}

template <class Record>
void read_through(Session& session) {
  (void)read_all<Record>(session);
}

template <class... Records>
void read_every(Session& session, std::type_identity<AccessTo<Reads, Records...>>) {
  (read_through<Records>(session), ...);
}

Findings unreadable_records(Session& session) {
  read_every(session, std::type_identity<AccessToRecords<Reads>>{});
  (void)all_movements(session);
  return {};
}

}  // namespace

std::vector<std::string> find_damage(Session& session) {
  using Check = Findings (*)(Session&);
  constexpr Check structure = [](Session& s) { return structural_damage(s.connection); };
  Findings found;
  for (const Check check :
       {structure, negative_stock, reused_order_numbers, unreadable_settings, unreadable_records}) {
    try {
      const auto more = translated([&] { return check(session); });
      found.insert(found.end(), more.begin(), more.end());
    } catch (const StoreFailure& failure) {
      found.emplace_back(failure.what());
    }
  }
  return found;
}

}  // namespace sparewell::store::sqlite
