#include "supply/count_plan.hpp"

#include <algorithm>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace count_plan_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

/// L1 (100 EUR) and L2 (10 EUR) in the main store, L1 at the branch, X (no catalogue line).
Clinic clinic_made() {
  Clinic clinic = clinic_with_item();
  clinic.items.push_back(stocked_item("L2"));
  clinic.items.back().unit_cost = Money{1000, {"EUR"}};
  clinic.shelf = {{{{"L1"}, "A", std::nullopt}, "main", 3},
                  {{{"L1"}, "B", std::nullopt}, "main", 1},
                  {{{"L1"}, "A", std::nullopt}, "branch", 1},
                  {{{"L2"}, "C", std::nullopt}, "main", 4}};
  return clinic;
}

ShelfCountRecord counted(const std::string& item, const std::string& place, int days_ago,
                         bool wrong) {
  return {{{item}, "A", std::nullopt}, place, today - days{days_ago}, 3, wrong ? 2 : 3, "Ina", ""};
}

std::vector<std::string> order_of(const std::vector<CountCandidate>& plan) {
  std::vector<std::string> made;
  for (const auto& candidate : plan) made.push_back(candidate.item.text + "@" + candidate.place);
  return made;
}

}  // namespace

TEST_CASE("Without any count the dearest shelf comes first, and the cheapest comes up too") {
  const auto plan = plan_counts(clinic_made(), {}, today);
  CHECK(order_of(plan) == std::vector<std::string>{"L1@main", "L1@branch", "L2@main"});
  CHECK(plan[0].pieces == 4);
  CHECK(plan[0].levels.size() == 2);
  CHECK(*plan[0].value == Money{40000, {"EUR"}});
  // By hand: v = 1, 1/4, 1/10; e = 1/2; d = 730.
  CHECK(plan[0].rank == doctest::Approx(365.0));
  CHECK(plan[1].rank == doctest::Approx((0.1 + 0.9 * 0.25) * 0.5 * 730));
  CHECK(plan[2].rank == doctest::Approx((0.1 + 0.9 * 0.1) * 0.5 * 730));
}

TEST_CASE("Errors raise the rank, a count lowers it, and corrections by a stock list are counts") {
  CountHistory history;
  history.counts = {counted("L1", "main", 100, false), counted("L1", "main", 50, false),
                    counted("L2", "main", 50, true), counted("L2", "main", 20, true),
                    counted("L2", "main", -3, true)};
  StockMovement correction{{{"L1"}, "A", std::nullopt},
                           "branch",
                           MovementKind::count_correction,
                           -1,
                           today - days{10},
                           "count"};
  auto issue = correction;
  issue.kind = MovementKind::issue;
  issue.on = today;
  history.movements = {correction, issue};
  const auto plan = plan_counts(clinic_made(), history, today);
  const auto of = [&](const std::string& name) {
    return *std::ranges::find_if(
        plan, [&](const auto& c) { return c.item.text + "@" + c.place == name; });
  };
  // By hand: no error in two counts, the last 50 days ago; two of two wrong, 20 days; one, 10 days.
  CHECK(of("L1@main").rank == doctest::Approx(1 * (1.0 / 4) * 50));
  CHECK(of("L2@main").rank == doctest::Approx(0.19 * (3.0 / 4) * 20));
  CHECK(of("L1@branch").rank == doctest::Approx(0.325 * (2.0 / 3) * 10));
  CHECK(of("L2@main").counts == 2);
  CHECK(of("L2@main").wrong_counts == 2);
  CHECK(of("L1@branch").last_counted == today - days{10});
}

TEST_CASE("A place and a number can be asked for; an unknown cost counts as the dearest") {
  auto clinic = clinic_made();
  CHECK(order_of(plan_counts(clinic, {}, today, "branch")) ==
        std::vector<std::string>{"L1@branch"});
  CHECK(plan_counts(clinic, {}, today, "", 2).size() == 2);
  CHECK(plan_counts(clinic, {}, today, "nowhere").empty());
  clinic.items[1].unit_cost.reset();
  const auto plan = plan_counts(clinic, {}, today, "main");
  CHECK(plan[0].rank == plan[1].rank);
  CHECK_FALSE(plan[1].value.has_value());
  std::ranges::reverse(clinic.shelf);
  CHECK(order_of(plan_counts(clinic, {}, today, "main")) == order_of(plan));
}

}  // namespace count_plan_test
