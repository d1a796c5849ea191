#include "store/engines.hpp"
#include "store/examples.hpp"

namespace sparewell::store::test::counts_test {
namespace {

ShelfCountRecord count_of(const std::string& lot, int recorded, int counted) {
  return {.lot = {.item = {"L-1"}, .lot = lot, .use_by = make_date(2027, 1, 31)},
          .place = "main store",
          .on = make_date(2026, 11, 25),
          .recorded = recorded,
          .counted = counted,
          .by = "Ina",
          .remark = "box open"};
}

}  // namespace

TEST_CASE_TEMPLATE("counts are kept in the order of writing, right or wrong, also of new lots",
                   Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const std::vector<ShelfCountRecord> written{count_of("A", 2, 2), count_of("B", 0, 3),
                                              count_of("A", 2, 1)};
  {
    const auto work = store->begin_write(anna);
    add_referred(*work);
    for (const auto& count : written) work->record_count(count);
    work->commit();
  }
  CHECK(store->read()->counts() == written);
  // A count alone moves nothing.
  CHECK(store->read()->shelf().empty());
  CHECK(store->read()->changes(1).front().record_kind == "count");
}

TEST_CASE_TEMPLATE("a count of an unknown item, below zero or without a place is refused", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  auto unknown = count_of("A", 1, 1);
  unknown.lot.item = {"Z-9"};
  CHECK(error_of([&] { work->record_count(unknown); }) == StoreError::not_found);
  CHECK(error_of([&] { work->record_count(count_of("A", 1, -1)); }) == StoreError::constraint);
  auto nowhere = count_of("A", 1, 1);
  nowhere.place.clear();
  CHECK(error_of([&] { work->record_count(nowhere); }) == StoreError::constraint);
  CHECK(work->counts().empty());
}

}  // namespace sparewell::store::test::counts_test
