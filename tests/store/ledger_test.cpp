#include <map>
#include <random>

#include "store/engines.hpp"
#include "store/examples.hpp"

namespace sparewell::store::test::ledger_test {
namespace {

const Date day = make_date(2026, 6, 1);

StockMovement moved(int quantity, const std::string& lot = "A", const std::string& place = "s") {
  return {.lot = {.item = {"L-1"}, .lot = lot, .use_by = {}},
          .place = place,
          .kind = quantity > 0 ? MovementKind::receipt : MovementKind::issue,
          .quantity = quantity,
          .on = day,
          .reason = "counted twice"};
}

}  // namespace

TEST_CASE_TEMPLATE("the ledger keeps every movement in the order of writing", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  auto with_date = moved(2);
  with_date.lot.use_by = make_date(2027, 1, 31);
  with_date.kind = MovementKind::give_back;
  const std::vector<StockMovement> written{moved(5), with_date, moved(-3), moved(4, "", "t")};
  {
    const auto work = store->begin_write(anna);
    add_referred(*work);
    for (const auto& movement : written) work->record(movement);
    work->commit();
  }
  const auto snapshot = store->read();
  CHECK(snapshot->movements() == written);
  const std::vector<StockLevel> shelf{
      {written[0].lot, "s", 2}, {with_date.lot, "s", 2}, {written[3].lot, "t", 4}};
  CHECK(snapshot->shelf() == shelf);
}

TEST_CASE_TEMPLATE("movements are found by the serial number of a piece of the item", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  auto movement = moved(2);
  movement.serials = {"A", "B"};
  {
    const auto work = store->begin_write(anna);
    add_referred(*work);
    work->record(movement);
    work->commit();
  }
  const auto snapshot = store->read();
  const auto found = snapshot->movements_of(movement.lot.item, "B");
  REQUIRE(found.size() == 1);
  CHECK(found[0].serials == std::vector<std::string>{"B"});
  CHECK(found[0].quantity == 2);
  CHECK(snapshot->movements_of(movement.lot.item, "C").empty());
  CHECK(snapshot->movements_of({"nothing"}, "B").empty());
}

TEST_CASE_TEMPLATE("movements are found by the lot of an item, and by their kind", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  auto with_date = moved(2);
  with_date.lot.use_by = make_date(2027, 1, 31);
  with_date.serials = {"S1", "S2"};
  auto other_item = moved(4);
  other_item.lot.item = {"L-2"};
  auto taken = moved(-1);
  taken.serials = {"S3"};
  {
    const auto work = store->begin_write(anna);
    add_referred(*work);
    for (const auto& movement : {moved(5), moved(3, "B"), with_date, other_item, taken}) {
      work->record(movement);
    }
    work->commit();
  }
  const auto snapshot = store->read();
  const std::vector<StockMovement> of_lot{moved(5), with_date, taken};
  CHECK(snapshot->movements_of_lot({"L-1"}, "A") == of_lot);
  CHECK(snapshot->movements_of_lot({"L-2"}, "A") == std::vector<StockMovement>{other_item});
  CHECK(snapshot->movements_of_lot({"L-1"}, "C").empty());
  CHECK(snapshot->movements_of_lot({"nothing"}, "A").empty());
  CHECK(snapshot->movements_of_kind(MovementKind::issue) == std::vector<StockMovement>{taken});
  CHECK(snapshot->movements_of_kind(MovementKind::receipt).size() == 4);
  CHECK(snapshot->movements_of_kind(MovementKind::count_correction).empty());
}

TEST_CASE_TEMPLATE("a lot whose pieces have all gone is not on the shelf", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  work->record(moved(2));
  work->record(moved(-2));
  CHECK(work->shelf().empty());
  CHECK(work->movements().size() == 2);
}

TEST_CASE_TEMPLATE("stock never falls below zero, counted for each lot and place", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  work->record(moved(2));
  for (const auto& movement : {moved(0), moved(-3), moved(-1, "B"), moved(-1, "A", "t")}) {
    CHECK(error_of([&] { work->record(movement); }) == StoreError::constraint);
  }
  auto other_date = moved(-1);
  other_date.lot.use_by = day;
  CHECK(error_of([&] { work->record(other_date); }) == StoreError::constraint);
  CHECK_NOTHROW(work->record(moved(-2)));
  CHECK(error_of([&] { work->record(moved(-1)); }) == StoreError::constraint);
  CHECK(work->movements().size() == 2);
}

TEST_CASE_TEMPLATE("a movement of an unknown item is refused", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  CHECK(error_of([&] { work->record(moved(1)); }) == StoreError::not_found);
}

TEST_CASE_TEMPLATE("after any sequence of movements the shelf is their sum", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  std::mt19937 random{20261125};
  const auto pick = [&](int most) { return static_cast<int>(random() % unsigned(most + 1)); };
  std::map<std::pair<Lot, std::string>, int> expected;
  int refused = 0;
  for (int i = 0; i < 2000; ++i) {
    StockMovement movement = moved(pick(12) - 6, std::string(1, char('A' + pick(2))),
                                   pick(1) == 0 ? "main store" : "quarantine");
    movement.lot.item.text = pick(1) == 0 ? "L-1" : "L-2";
    if (pick(2) == 0) movement.lot.use_by = make_date(2027, 1, unsigned(1 + pick(1)));
    auto& level = expected[{movement.lot, movement.place}];
    if (movement.quantity == 0 || level + movement.quantity < 0) {
      ++refused;
      CHECK(error_of([&] { work->record(movement); }) == StoreError::constraint);
    } else {
      work->record(movement);
      level += movement.quantity;
    }
  }
  CHECK(refused > 100);
  std::map<std::pair<Lot, std::string>, int> found;
  for (const auto& level : work->shelf()) found[{level.lot, level.place}] = level.quantity;
  std::erase_if(expected, [](const auto& entry) { return entry.second == 0; });
  CHECK(found == expected);
  CHECK(work->movements().size() == static_cast<std::size_t>(2000 - refused));
}

}  // namespace sparewell::store::test::ledger_test
