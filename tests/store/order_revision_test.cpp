#include "store/engines.hpp"
#include "store/examples.hpp"

namespace sparewell::store::test::order_revision_test {

TEST_CASE_TEMPLATE("a revision of an order comes back as it was, and is never changed", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  work->put(bare<OrderRevision>());
  const auto revision = work->put(full<OrderRevision>());
  work->put(bare<OrderRevisionLine>());
  const auto line = work->put(full<OrderRevisionLine>());
  CHECK(work->template all<OrderRevision>()[0].record == bare<OrderRevision>());
  CHECK(work->template all<OrderRevision>()[1].record == full<OrderRevision>());
  CHECK(work->template all<OrderRevisionLine>()[0].record == bare<OrderRevisionLine>());
  CHECK(work->template all<OrderRevisionLine>()[1].record == full<OrderRevisionLine>());
  CHECK(error_of([&] { work->put_instead(revision, full_but_changed<OrderRevision>()); }) ==
        StoreError::constraint);
  CHECK(error_of([&] { work->put_instead(line, full_but_changed<OrderRevisionLine>()); }) ==
        StoreError::constraint);
}

TEST_CASE_TEMPLATE("serial numbers stay with their movement", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  StockMovement movement{.lot = {.item = {"L-1"}, .lot = "A"},
                         .place = "shelf 1",
                         .quantity = 3,
                         .on = make_date(2026, 5, 1),
                         .serials = {"S-2", "S-1"}};
  work->record(movement);
  auto other = movement;
  other.serials.clear();
  work->record(other);
  auto twice = movement;
  twice.serials = {"S-3", "S-3"};
  CHECK(error_of([&] { work->record(twice); }) == StoreError::constraint);
  auto too_many = movement;
  too_many.quantity = 1;
  CHECK(error_of([&] { work->record(too_many); }) == StoreError::constraint);
  work->commit();
  CHECK(store->read()->movements() == std::vector<StockMovement>{movement, other});
}

TEST_CASE_TEMPLATE("the number of a cancelled order is not given out again", Engine,
                   SPAREWELL_SHARED_ENGINES) {
  const Engine engine;
  {
    const auto store = engine.open();
    const auto work = store->begin_write(anna);
    add_referred(*work);
    auto line = full<OrderLine>();
    line.order_ref = work->take_order_number(2026);
    CHECK(line.order_ref == "SW-2026-0001");
    const auto id = work->put(line);
    line.state = OrderState::cancelled;
    work->put_instead(id, line);
    work->commit();
  }
  const auto again = engine.open();  // as after a restart
  CHECK(again->begin_write(anna)->take_order_number(2026) == "SW-2026-0002");
}

}  // namespace sparewell::store::test::order_revision_test
