#include "store/engines.hpp"
#include "store/examples.hpp"

namespace sparewell::store::test::bookings_test {
namespace {

StockMovement moved(const char* item, int quantity) {
  return {{{item}, "A", {}}, "s", MovementKind::receipt, quantity, make_date(2026, 1, 1), "why"};
}

void write(Store& store, const std::vector<StockMovement>& movements, bool with_loan = false) {
  const auto work = store.begin_write(anna);
  for (const auto& movement : movements) work->record(movement);
  if (with_loan) work->put(full<Loan>());
  work->commit();
}

}  // namespace

TEST_CASE_TEMPLATE("the ledger is read by units of work, and each is taken back at most once",
                   Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  {
    const auto work = store->begin_write(anna);
    add_referred(*work);
    work->commit();
  }
  write(*store, {moved("L-1", 3), moved("L-2", 4)});
  write(*store, {moved("L-2", 1)}, true);
  const auto of_second = store->read()->bookings_of({"L-2"}, 10);
  REQUIRE(of_second.size() == 2);
  CHECK(of_second[0].wrote_more);
  CHECK_FALSE(of_second[1].wrote_more);
  CHECK(of_second[1].movements == std::vector{moved("L-1", 3), moved("L-2", 4)});
  CHECK(of_second[1].who == anna.who);
  CHECK(store->read()->bookings_of({"L-1"}, 10).size() == 1);
  CHECK(store->read()->bookings_of({"L-2"}, 1).size() == 1);
  CHECK(store->read()->bookings_of({"none"}, 1).empty());

  const auto id = of_second[1].id;
  const auto work = store->begin_write(anna);
  work->record(moved("L-1", -3));
  work->mark_reversed(id);
  CHECK(error_of([&] { work->mark_reversed(id); }) == StoreError::constraint);
  CHECK(error_of([&] { work->mark_reversed({4711}); }) == StoreError::not_found);
  work->commit();
  const auto now = store->read();
  REQUIRE(now->booking(id)->reversed_by);
  CHECK(now->booking(*now->booking(id)->reversed_by)->movements.size() == 1);
  CHECK_FALSE(now->booking({4711}));
}

TEST_CASE_TEMPLATE("loans and returns are found by their numbers", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  CHECK(work->last_loan() == 0);
  CHECK(work->last_supplier_return() == 0);
  work->put(full<Loan>());
  work->put(full<SupplierReturn>());
  CHECK(work->last_loan() == 2);
  CHECK(work->last_supplier_return() == 2);
  CHECK(work->loan(2)->record == full<Loan>());
  CHECK(work->supplier_return(2)->record == full<SupplierReturn>());
  CHECK_FALSE(work->loan(1));
}

}  // namespace sparewell::store::test::bookings_test
