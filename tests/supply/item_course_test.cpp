#include "supply/item_course.hpp"

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace item_course_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;
using doctest::Approx;

namespace {

/// One piece every five days on average, ordered on Wednesdays, a week to arrive.
struct Given {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;

  Given() { add_poisson_demand(clinic, lives, 0.2, 200); }
  [[nodiscard]] ItemCourse course() const {
    const auto policy = policy_of(clinic.settings);
    const auto lines = propose(clinic, lives, today, policy).lines;
    ItemCourses courses{clinic, lives, today, policy};
    return *courses.of({"L1"}, lines.empty() ? nullptr : &lines.front());
  }
};

}  // namespace

TEST_CASE("A course runs over half a year from what is there, with the levels of the policy") {
  Given given;
  add_stock(given.clinic, 5);
  add_stock(given.clinic, 2, today - days{1}, "main store", "OLD");
  const auto course = given.course();
  REQUIRE(course.alone.size() == course_weeks + 1);
  CHECK(course.there == 5);  // not what expired yesterday
  CHECK(course.alone[0].p50 == 5);
  // Poisson with mean 1.4 a week: P(N >= 5), from the closed form; 200 users are nearly Poisson.
  double at_most_4 = 0;
  for (int n = 0; n <= 4; ++n) at_most_4 += poisson(n, 1.4);
  CHECK(course.alone[1].chance_none == Approx(1 - at_most_4).epsilon(0.03));
  // Two weeks are protected, 2.8 pieces on average: P(N <= 6) = 0.976, P(N <= 5) = 0.935 (by hand).
  REQUIRE(course.target);
  CHECK(*course.target == 6);
  CHECK(course.position == 5);
  CHECK(course.next_order_day == today + days{7});
  CHECK(course.next_arrival == today + days{14});
  CHECK(course.order_days.size() == course_weeks);
  REQUIRE(course.ordered_today);
  CHECK(course.ordered_today->middle == today + days{7});
  REQUIRE(course.with_order.size() == course.alone.size());
  CHECK(course.with_order[2].mean > course.alone[2].mean);
  REQUIRE(course.runs_out);
  REQUIRE(course.runs_out_with_order);
  CHECK(*course.runs_out <= *course.runs_out_with_order);
}

TEST_CASE("An order that is later than any delivery seen is taken as if it were new") {
  Given given;
  add_stock(given.clinic, 20);
  given.clinic.order_lines = {placed(2, today - days{3}, "O1"), placed(3, today - days{30}, "O2")};
  const auto course = given.course();
  REQUIRE(course.coming.size() == 2);
  CHECK(course.coming[0].order_ref == "O2");
  CHECK(course.coming[0].overdue);
  CHECK(course.coming[0].middle == today + days{7});
  CHECK_FALSE(course.coming[1].overdue);
  CHECK(course.coming[1].middle == today + days{4});
  // By hand: 20 + 5 - 1.4 after a week.
  CHECK(course.alone[1].mean == Approx(23.6).epsilon(0.01));
}

TEST_CASE("A day that the supplier promised stands in the place of the lead time") {
  Given given;
  given.clinic.order_lines = {placed(2, today - days{3}, "O1")};
  OrderPromise promise;
  promise.supplier = {"Example Supplies"};
  promise.order_ref = "O1";
  promise.item = {"L1"};
  promise.promised_on = today + days{40};
  given.clinic.order_promises = {promise};
  const auto course = given.course();
  REQUIRE(course.coming.size() == 1);
  CHECK(course.coming[0].early == today + days{40});
  CHECK(course.coming[0].late == today + days{40});
}

TEST_CASE("A lot that goes past its use-by date is told with what is lost of it") {
  Given given;
  add_stock(given.clinic, 30, today + days{20});
  add_stock(given.clinic, 4, std::nullopt, "main store", "B2");
  const auto course = given.course();
  REQUIRE(course.at_risk.size() == 1);
  // By hand: 30 less the 4 that are used in 20 days.
  CHECK(course.at_risk[0].lost == Approx(26).epsilon(0.01));
  CHECK(course.alone[2].mean == Approx(34 - 2.8).epsilon(0.01));  // 14 days, nothing lost yet
  CHECK(course.alone[3].p90 <= 4);
}

TEST_CASE("What is booked is certain, and its patient's part is not left to chance too") {
  Given given;
  given.lives.erase(given.lives.begin() + 1, given.lives.end());
  given.clinic.units.resize(1);
  add_stock(given.clinic, 3);
  given.clinic.reservations = {
      {given.clinic.units[0].patient, {"L1"}, "main store", 1, today + days{10}}};
  const auto course = given.course();
  // By hand: the only user gets the booked piece.
  CHECK(course.alone[1].mean == Approx(3));
  CHECK(course.alone[2].mean == Approx(2));
  CHECK(course.alone[26].mean == Approx(2));
  REQUIRE(course.booked.size() == 1);
}

TEST_CASE("An item that the catalogue does not have has no course") {
  Given given;
  ItemCourses courses{given.clinic, given.lives, today, policy_of(given.clinic.settings)};
  CHECK_FALSE(courses.of({"NONE"}, nullptr));
}

}  // namespace item_course_test
