#include <nlohmann/json.hpp>

#include "store/engines.hpp"
#include "store/examples.hpp"

namespace sparewell::store::test::change_log_test {
namespace {

using Json = nlohmann::json;

}  // namespace

TEST_CASE_TEMPLATE("the change log says who added what, when and why", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  RowId id;
  {
    const auto work = store->begin_write({"bo", "first visit"});
    id = work->put(full<Patient>());
    work->commit();
  }
  const auto changes = store->read()->changes(10);
  REQUIRE(changes.size() == 1);
  CHECK(changes[0].who == "bo");
  CHECK(changes[0].why == "first visit");
  CHECK(changes[0].at == "2026-11-25T09:30:00Z");
  CHECK(changes[0].record_kind == "patient");
  CHECK(changes[0].row == id);
  CHECK(changes[0].action == "added");
  CHECK(changes[0].before.empty());
}

TEST_CASE_TEMPLATE("a change keeps the values before it", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  const auto item = work->put(full<Item>());
  work->put_instead(item, full_but_changed<Item>());
  auto change = work->changes(1).at(0);
  CHECK(change.action == "changed");
  CHECK(change.row == item);
  auto before = Json::parse(change.before);
  CHECK(before["code"] == "X-2");
  CHECK(before["material"] == "mineral-oil gel");
  CHECK(before["supplier"] == "Nordlicht Parts");
  CHECK(before["unit_cost"] == Json{{"minor", 1000}, {"currency", "EUR"}});
  CHECK(before["constituents"].size() == 3);
  CHECK(before["price_breaks"][1]["from_quantity"] == 50);

  const auto unit = work->put(full<Unit>());
  work->put_instead(unit, full_but_changed<Unit>());
  before = Json::parse(work->changes(1).at(0).before);
  CHECK(before["patient"] == "P-1");
  CHECK(before["ended_on"] == "2026-10-01");
  CHECK(before["end_reason"] == "lost grip");
  CHECK(before["share"] == 0.5);
  work->put_instead(unit, full<Unit>());
  CHECK(Json::parse(work->changes(1).at(0).before)["end_reason"].is_null());
}

TEST_CASE_TEMPLATE("a record put in place of one that is alike is no change", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  const auto id = work->put(full<Patient>());
  work->put_instead(id, full<Patient>());
  CHECK(work->changes(10).size() == 1);
}

TEST_CASE_TEMPLATE("everything that is written is logged, newest first", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  work->put(Item{.code = {"L-1"}});
  work->record({.lot = {.item = {"L-1"}, .lot = "A"},
                .place = "s",
                .quantity = 1,
                .on = make_date(2026, 1, 1)});
  (void)work->take_order_number(2026);
  std::vector<std::string> kinds;
  for (const auto& change : work->changes(100)) kinds.push_back(change.record_kind);
  CHECK(kinds == std::vector<std::string>{"order number", "movement", "lot", "item"});
  CHECK(work->changes(2).size() == 2);
  CHECK(work->changes(2)[0].record_kind == "order number");
  CHECK(work->changes(0).empty());
  CHECK(work->changes(-1).empty());
}

TEST_CASE_TEMPLATE("a text that is not UTF-8 does not stop the log", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  const auto id = work->put(Patient{.ref = {"P-1"}, .given_name = "\xFF\xFE"});
  CHECK_NOTHROW(work->put_instead(id, Patient{.ref = {"P-1"}}));
  CHECK(Json::accept(work->changes(1).at(0).before));
}

}  // namespace sparewell::store::test::change_log_test
