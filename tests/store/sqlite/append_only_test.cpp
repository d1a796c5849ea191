#include "store/engines.hpp"
#include "store/examples.hpp"
#include "store/sqlite/raw.hpp"

namespace sparewell::store::test::append_only_test {
namespace {

void fill(Store& store) {
  const auto work = store.begin_write(anna);
  add_referred(*work);
  work->record({.lot = {.item = {"L-1"}, .lot = "A"},
                .place = "s",
                .quantity = 2,
                .on = make_date(2026, 1, 1)});
  work->record_count({.lot = {.item = {"L-1"}, .lot = "A"},
                      .place = "s",
                      .on = make_date(2026, 1, 1),
                      .recorded = 2,
                      .counted = 2});
  (void)work->take_order_number(2026);
  work->commit();
  const auto again = store.begin_write(anna);
  again->mark_reversed({1});
  again->commit();
}

}  // namespace

TEST_CASE("the ledger, the change log and order numbers only grow, whoever writes the SQL") {
  const SqliteFile engine;
  const auto store = engine.open();
  fill(*store);
  auto raw = raw_database(engine.path());
  for (const char* table :
       {"movements", "changes", "change_sets", "order_numbers", "reversals", "counts"}) {
    CAPTURE(table);
    const std::string name{table};
    const auto content = [&] {
      return raw.execAndGet("SELECT COUNT(*) * 1000 + SUM(id) FROM " + name).getInt();
    };
    const auto before = content();
    CHECK(before > 1000);
    CHECK_THROWS_AS(raw.exec("DELETE FROM " + name), SQLite::Exception);
    CHECK_THROWS_AS(raw.exec("UPDATE " + name + " SET id = id + 100"), SQLite::Exception);
    CHECK_THROWS_AS(raw.exec("INSERT OR REPLACE INTO " + name + " SELECT * FROM " + name),
                    SQLite::Exception);
    CHECK(content() == before);
  }
}

TEST_CASE("raw SQL cannot take stock below zero either") {
  const SqliteFile engine;
  const auto store = engine.open();
  fill(*store);
  auto raw = raw_database(engine.path());
  const auto take = [&](int pieces) {
    raw.exec(
        "INSERT INTO movements (change_set_id, lot_id, place, kind, quantity, moved_on, "
        "reason) VALUES (1, 1, 's', 'issue', -" +
        std::to_string(pieces) + ", '2026-01-02', '')");
  };
  CHECK_THROWS_AS(take(3), SQLite::Exception);
  CHECK_NOTHROW(take(2));
}

}  // namespace sparewell::store::test::append_only_test
