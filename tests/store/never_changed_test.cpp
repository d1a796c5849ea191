#include "store/engines.hpp"
#include "store/examples.hpp"

namespace sparewell::store::test::never_changed_test {
namespace {

template <class Record>
void check_added_only(UnitOfWork& work) {
  CAPTURE(typeid(Record).name());
  work.put(bare<Record>());
  const auto id = work.put(full<Record>());
  CHECK(work.template all<Record>()[0].record == bare<Record>());
  CHECK(work.template all<Record>()[1].record == full<Record>());
  CHECK(error_of([&] { work.put_instead(id, full_but_changed<Record>()); }) ==
        StoreError::constraint);
  CHECK(error_of([&] { work.put(full_but_changed<Record>()); }) == StoreError::constraint);
}

}  // namespace

TEST_CASE_TEMPLATE("answers and closed months are added only", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  check_added_only<BillingAnswer>(*work);
  check_added_only<MonthClose>(*work);
  check_added_only<ClosedEntry>(*work);
}

}  // namespace sparewell::store::test::never_changed_test
