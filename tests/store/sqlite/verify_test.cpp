#include "store/engines.hpp"
#include "store/examples.hpp"
#include "store/sqlite/raw.hpp"

namespace sparewell::store::test::verify_test {
namespace {

std::unique_ptr<Store> filled(const SqliteFile& engine) {
  auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  work->put(full<Unit>());
  work->save({.name = "Invented Clinic"});
  work->record({.lot = {.item = {"L-1"}, .lot = "A"},
                .place = "s",
                .quantity = 2,
                .on = make_date(2026, 1, 1)});
  (void)work->take_order_number(2026);
  work->commit();
  return store;
}

/// verify() finds one thing, whose sentence holds `words`, after `sql` was run.
void check_found(const std::string& sql, const std::string& words) {
  const SqliteFile engine;
  const auto store = filled(engine);
  CHECK(store->verify().empty());
  raw_database(engine.path()).exec(sql);
  const auto found = store->verify();
  REQUIRE(found.size() == 1);
  CHECK(found[0].find(words) != std::string::npos);
}

}  // namespace

TEST_CASE_TEMPLATE("nothing is found in a sound clinic", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  CHECK(engine.open()->verify().empty());
}

TEST_CASE("verify finds a reference that leads nowhere") {
  check_found(
      "PRAGMA foreign_keys = OFF;"
      "INSERT INTO lots (item_id, lot) VALUES (99, 'Z')",
      "lots");
}

TEST_CASE("verify finds a ledger that was below zero for a while") {
  check_found(
      "DROP TRIGGER movements_never_below_zero;"
      "INSERT INTO movements (change_set_id, lot_id, place, kind, quantity, moved_on,"
      " reason) VALUES (1, 1, 's', 'issue', -3, '2026-01-02', ''),"
      " (1, 1, 's', 'receipt', 5, '2026-01-02', '')",
      "falls to -1");
}

TEST_CASE("verify finds an order number on orders to two suppliers") {
  check_found(
      "INSERT INTO suppliers (id, name, order_weekdays, order_every_days, currency, email,"
      " account) VALUES (2, 'Other', 0, 0, 'EUR', '', '');"
      "INSERT INTO order_lines (supplier_id, order_ref, item_id, ordered_on, quantity,"
      " received_quantity, state, copy)"
      " SELECT id, 'SW-2026-0001', 1, '2026-01-01', 1, 0, 'placed', 1 FROM suppliers",
      "SW-2026-0001");
}

TEST_CASE("verify finds a setting that cannot be read") {
  check_found("UPDATE settings SET value = '0.9x' WHERE key = 'service_target'", "service_target");
}

TEST_CASE("verify finds a value that breaks the rule of its column") {
  check_found(
      "PRAGMA ignore_check_constraints = ON;"
      "UPDATE units SET share = 2.0",
      "CHECK constraint failed in units");
}

TEST_CASE("verify finds a damaged page") {
  const SqliteFile engine;
  const auto store = filled(engine);
  {
    auto raw = raw_database(engine.path());
    raw.exec(
        "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET rootpage = (SELECT rootpage"
        " FROM sqlite_schema WHERE name = 'lots_once') WHERE name = 'units_once'");
  }
  CHECK_FALSE(store->verify().empty());
  CHECK(error_of([&] { (void)engine.open(); }) == StoreError::corrupt);
}

TEST_CASE("keys of settings that are unknown stay") {
  const SqliteFile engine;
  const auto store = filled(engine);
  auto raw = raw_database(engine.path());
  raw.exec("INSERT INTO settings (key, value) VALUES ('colour of the door', 'blue')");
  {
    const auto work = store->begin_write(anna);
    work->save({.name = "Another Clinic"});
    work->commit();
  }
  CHECK(raw.execAndGet("SELECT value FROM settings WHERE key = 'colour of the door'").getString() ==
        "blue");
  CHECK(store->read()->settings().name == "Another Clinic");
  CHECK(store->verify().empty());
}

}  // namespace sparewell::store::test::verify_test
