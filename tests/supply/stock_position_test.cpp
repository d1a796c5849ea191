#include "supply/stock_position.hpp"

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace stock_position_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

StockPosition position_of(const Clinic& clinic) {
  return StockBook{clinic}.position({"L1"}, today + days{14}, today - days{14}, today + days{14});
}

}  // namespace

TEST_CASE("Expired and soon-expiring lots do not count and are listed") {
  Clinic clinic = clinic_with_item();
  add_stock(clinic, 2, today - days{1}, "main store", "old");
  add_stock(clinic, 3, today + days{13}, "main store", "soon");
  add_stock(clinic, 4, today + days{14}, "main store", "just");
  add_stock(clinic, 5, std::nullopt, "branch", "");
  const StockPosition position = position_of(clinic);
  CHECK(position.on_hand == 9);
  REQUIRE(position.uncounted.size() == 2);
  CHECK(position.uncounted[0].level.lot.lot == "old");
  CHECK_FALSE(position.uncounted[0].quarantined);
}

TEST_CASE("Quarantined stock does not count and is listed as such") {
  Clinic clinic = clinic_with_item();
  add_stock(clinic, 2, std::nullopt, "Quarantine shelf");
  const StockPosition position = position_of(clinic);
  CHECK(position.on_hand == 0);
  REQUIRE(position.uncounted.size() == 1);
  CHECK(position.uncounted[0].quarantined);
}

TEST_CASE("On order is what placed lines still owe; what is late is told apart") {
  Clinic clinic = clinic_with_item();
  clinic.order_lines = {placed(5, today - days{3}, "O1"), placed(4, today - days{15}, "O2"),
                        placed(7, today, "O3"), placed(9, today, "O4")};
  clinic.order_lines[1].received_quantity = 1;
  clinic.order_lines[2].state = OrderState::draft;
  clinic.order_lines[3].state = OrderState::cancelled;
  const StockPosition position = position_of(clinic);
  CHECK(position.on_order == 8);
  CHECK(position.overdue == 3);
}

TEST_CASE("Reserved pieces reduce the position") {
  Clinic clinic = clinic_with_item();
  add_stock(clinic, 2);
  clinic.reservations = {{{"P1"}, {"L1"}, "main store", 1, std::nullopt},
                         {{"P2"}, {"L1"}, "main store", 2, std::nullopt},
                         {{"P2"}, {"L9"}, "main store", 7, std::nullopt}};
  const StockPosition position = position_of(clinic);
  CHECK(position.reserved == 3);
  CHECK(position.booked == 0);
  CHECK(position.total() == -1);
}

TEST_CASE("Pieces booked for a day count from when that day is near") {
  Clinic clinic = clinic_with_item();
  clinic.reservations = {{{"P1"}, {"L1"}, "main store", 1, today - days{3}},
                         {{"P2"}, {"L1"}, "main store", 2, today + days{14}},
                         {{"P3"}, {"L1"}, "main store", 4, today + days{15}},
                         {{"P4"}, {"L1"}, "main store", 8, std::nullopt}};
  const StockPosition position = position_of(clinic);
  CHECK(position.reserved == 11);
  CHECK(position.booked == 3);
  CHECK(position.booked_later == 4);
  const auto sorted = StockBook{clinic}.reservations({"L1"});
  REQUIRE(sorted.size() == 4);
  CHECK(sorted.front()->patient.text == "P4");
  CHECK(sorted.back()->patient.text == "P3");
}

}  // namespace stock_position_test
