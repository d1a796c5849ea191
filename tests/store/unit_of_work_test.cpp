#include "store/engines.hpp"
#include "store/examples.hpp"

namespace sparewell::store::test::unit_of_work_test {

TEST_CASE_TEMPLATE("a unit of work that is not committed leaves nothing behind", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  {
    const auto work = store->begin_write(anna);
    add_referred(*work);
    work->save({.name = "Invented Clinic"});
    work->record({.lot = {.item = {"L-1"}, .lot = "A"},
                  .place = "s",
                  .quantity = 1,
                  .on = make_date(2026, 1, 1)});
  }
  const auto snapshot = store->read();
  CHECK(snapshot->template all<Patient>().empty());
  CHECK(snapshot->movements().empty());
  CHECK(snapshot->settings() == ClinicSettings{});
  CHECK(snapshot->changes(10).empty());
}

TEST_CASE_TEMPLATE("a unit of work reads its own writes", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  work->save({.name = "Invented Clinic"});
  work->record({.lot = {.item = {"L-1"}, .lot = "A"},
                .place = "s",
                .quantity = 4,
                .on = make_date(2026, 1, 1)});
  CHECK(work->template all<Patient>().size() == 2);
  CHECK(work->settings().name == "Invented Clinic");
  REQUIRE(work->shelf().size() == 1);
  CHECK(work->shelf()[0].quantity == 4);
}

TEST_CASE_TEMPLATE("a refused record leaves the rest of its unit of work whole", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  {
    const auto work = store->begin_write(anna);
    add_referred(*work);
    auto item = full<Item>();
    item.price_breaks.push_back({-1, {100, {"EUR"}}});
    CHECK(error_of([&] { work->put(item); }) == StoreError::constraint);
    CHECK(error_of([&] { work->put(Patient{.ref = {"P-1"}}); }) == StoreError::constraint);
    work->put(full<Patient>());
    work->commit();
  }
  const auto snapshot = store->read();
  CHECK(snapshot->template all<Item>().size() == 2);
  CHECK(snapshot->template all<Patient>().size() == 3);
  CHECK(snapshot->changes(100).size() == 6);
}

TEST_CASE_TEMPLATE("a unit of work ends with its commit", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  work->put(full<Patient>());
  work->commit();
  CHECK_THROWS_AS(work->put(bare<Patient>()), std::logic_error);
  CHECK_THROWS_AS(work->commit(), std::logic_error);
  CHECK(store->read()->template all<Patient>().size() == 1);
}

TEST_CASE_TEMPLATE("one store has one unit of work at a time", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  {
    const auto work = store->begin_write(anna);
    CHECK(error_of([&] { (void)store->begin_write(anna); }) == StoreError::busy);
  }
  CHECK_NOTHROW((void)store->begin_write(anna));
}

TEST_CASE_TEMPLATE("a snapshot and a unit of work may outlive their store", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  auto store = engine.open();
  const auto snapshot = store->read();
  const auto work = store->begin_write(anna);
  store.reset();
  work->put(full<Patient>());
  CHECK_NOTHROW(work->commit());
  CHECK(snapshot->template all<Patient>().empty());
}

}  // namespace sparewell::store::test::unit_of_work_test
