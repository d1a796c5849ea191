// Reads of one item, patient or order give what the whole lists hold of it.
#include <algorithm>
#include <random>

#include "store/engines.hpp"
#include "store/examples.hpp"

namespace sparewell::store::test::of_item_test {
namespace {

const Date day = make_date(2026, 6, 1);

Unit unit(const std::string& patient, const std::string& item, const std::string& serial) {
  return {.patient = {patient}, .item = {item}, .lot = "A", .serial = serial, .issued_on = day};
}

OrderLine line(const std::string& ref, const std::string& item) {
  return {.supplier = {"Nordlicht Parts"},
          .order_ref = ref,
          .item = {item},
          .ordered_on = day,
          .quantity = 2};
}

template <class Record>
std::vector<Record> records(const std::vector<Row<Record>>& rows) {
  std::vector<Record> made;
  for (const auto& row : rows) made.push_back(row.record);
  return made;
}

}  // namespace

TEST_CASE_TEMPLATE("an item and a patient are found by their reference", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  const auto item = work->put(full<Item>());
  const auto patient = work->put(full<Patient>());
  work->put(bare<Item>());
  const auto found = work->item(full<Item>().code);
  REQUIRE(found);
  CHECK(found->id == item);
  CHECK(found->record == full<Item>());
  CHECK(work->patient(full<Patient>().ref)->id == patient);
  CHECK(work->patient(full<Patient>().ref)->record == full<Patient>());
  CHECK_FALSE(work->item({"x-2"}));  // upper and lower case are different codes
  CHECK_FALSE(work->item({""}));
  CHECK_FALSE(work->patient({"nobody"}));
  work->commit();
  CHECK(store->read()->item(full<Item>().code)->record == full<Item>());
}

TEST_CASE_TEMPLATE("units, order lines and stock of one item leave the others out", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  work->put(unit("P-1", "L-1", "1"));
  work->put(unit("P-1", "L-2", "2"));
  work->put(unit("P-2", "L-1", "3"));
  const auto first = work->put(line("O-1", "L-2"));
  work->put(line("O-1", "L-1"));
  CHECK(records(work->units_of({"L-1"})) ==
        std::vector{unit("P-1", "L-1", "1"), unit("P-2", "L-1", "3")});
  REQUIRE(work->order_lines_of({"L-2"}).size() == 1);
  CHECK(work->order_lines_of({"L-2"}).front().id == first);
  CHECK(records(work->order_lines_of({"L-1"})) == std::vector{line("O-1", "L-1")});
  work->put(line("O-2", "L-1"));
  CHECK(records(work->lines_of_order("O-1")) ==
        std::vector{line("O-1", "L-2"), line("O-1", "L-1")});
  CHECK(work->lines_of_order("O-2").size() == 1);
  CHECK(work->lines_of_order("none").empty());
  CHECK(work->units_of({"none"}).empty());
  CHECK(work->order_lines_of({"none"}).empty());
  CHECK(work->shelf_of({"L-1"}).empty());
  CHECK(work->shelf_of({"none"}).empty());
}

TEST_CASE_TEMPLATE("after any sequence of movements an item's stock is its part of the shelf",
                   Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  std::mt19937 random{20261125};
  const auto pick = [&](int most) { return static_cast<int>(random() % unsigned(most + 1)); };
  for (int i = 0; i < 1000; ++i) {
    StockMovement movement{.lot = {.item = {pick(1) == 0 ? "L-1" : "L-2"},
                                   .lot = std::string(1, char('A' + pick(3))),
                                   .use_by = {}},
                           .place = pick(1) == 0 ? "main store" : "quarantine",
                           .kind = MovementKind::count_correction,
                           .quantity = pick(6) - 3,
                           .on = day,
                           .reason = ""};
    if (pick(1) == 0) movement.lot.use_by = make_date(2027, 1, unsigned(1 + pick(1)));
    try {
      work->record(movement);
    } catch (const StoreFailure& below_zero) {
      CHECK(below_zero.error() == StoreError::constraint);
    }
  }
  for (const ItemCode& item : {ItemCode{"L-1"}, ItemCode{"L-2"}}) {
    auto expected = work->shelf();
    std::erase_if(expected, [&](const StockLevel& level) { return level.lot.item != item; });
    CHECK(expected.size() > 3);
    CHECK(work->shelf_of(item) == expected);
  }
}

}  // namespace sparewell::store::test::of_item_test
