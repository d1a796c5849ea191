#include "supply/serving.hpp"

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace serving_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

void book(Clinic& clinic, const std::string& patient, int pieces, std::optional<Date> on,
          const std::string& place = "main store") {
  clinic.reservations.push_back({{patient}, {"L1"}, place, pieces, on});
}

}  // namespace

TEST_CASE("The soonest booking takes from the shelf first, at its own place before others") {
  Clinic clinic = clinic_with_item();
  add_stock(clinic, 2);
  add_stock(clinic, 1, std::nullopt, "branch");
  add_stock(clinic, 9, std::nullopt, "quarantine");
  book(clinic, "P2", 2, today + days{5});
  book(clinic, "P1", 1, today + days{3});
  book(clinic, "P3", 1, today + days{4}, "branch");
  const auto made = servings(clinic, today);
  REQUIRE(made.size() == 3);
  CHECK(made[0].booking->patient.text == "P1");
  CHECK(made[0].here == 1);
  CHECK(made[1].booking->patient.text == "P3");
  CHECK(made[1].here == 1);
  CHECK(made[2].here == 1);
  CHECK(made[2].elsewhere == 0);
  CHECK(made[2].missing == 1);
  clinic.reservations.pop_back();  // the branch's piece is free then
  const auto without = servings(clinic, today);
  CHECK(without[1].elsewhere == 1);
  CHECK(without[1].other_place == "branch");
  CHECK(without[1].missing == 0);
}

TEST_CASE("A lot that expires before the day does not serve; one that expires on it does") {
  Clinic clinic = clinic_with_item();
  add_stock(clinic, 1, today + days{9}, "main store", "A");
  add_stock(clinic, 1, today + days{10}, "main store", "B");
  book(clinic, "P1", 2, today + days{10});
  const auto made = servings(clinic, today);
  REQUIRE(made.size() == 1);
  CHECK(made[0].here == 1);
  CHECK(made[0].missing == 1);
}

TEST_CASE("What is on order serves when it is expected by the day, and is late otherwise") {
  Clinic clinic = clinic_with_item();
  // Quoted 7 days: expected in 5 and in 7 days.
  clinic.order_lines = {placed(1, today - days{2}, "O1"), placed(1, today, "O2"),
                        placed(1, today, "O3")};
  clinic.order_lines[2].state = OrderState::draft;
  book(clinic, "P1", 1, today - days{1});  // overdue: as if it were today
  book(clinic, "P2", 2, today + days{7});
  const auto made = servings(clinic, today);
  REQUIRE(made.size() == 2);
  CHECK(made[0].late == 1);
  CHECK(made[0].expected_on == today + days{5});
  CHECK(made[1].coming == 1);
  CHECK(made[1].missing == 1);
  CHECK(made[1].expected_on == today + days{7});
}

TEST_CASE("A booking without a day comes first and is never late; used-up ones are left out") {
  Clinic clinic = clinic_with_item();
  clinic.order_lines = {placed(1, today, "O1")};
  book(clinic, "P1", 1, today + days{30});
  book(clinic, "P2", 1, std::nullopt);
  book(clinic, "P3", 0, today);
  const auto made = servings(clinic, today);
  REQUIRE(made.size() == 2);
  CHECK(made[0].booking->patient.text == "P2");
  CHECK(made[0].coming == 1);
  CHECK(made[1].missing == 1);
}

}  // namespace serving_test
