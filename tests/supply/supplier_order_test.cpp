// Orders of one supplier taken together, targets from costs, and a limited sum.
#include <cmath>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/order_cost.hpp"

namespace supplier_order_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

Money euros(int whole) {
  return Money{whole * 100, Currency{"EUR"}};
}

/// L1 needs 6 on average until the next order arrives, L2 two.
struct TwoItems {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;

  TwoItems() {
    clinic.suppliers[0].currency = Currency{"EUR"};
    clinic.items.push_back(stocked_item("L2"));
    clinic.settings.service_target = 0.8;
    add_poisson_demand(clinic, lives, 6.0 / 14, 60);
    add_poisson_demand(clinic, lives, 2.0 / 14, 60, "L2");
  }
  void add_second(int quantity) {
    clinic.shelf.push_back({{{"L2"}, "B1", std::nullopt}, "main store", quantity});
  }
  [[nodiscard]] Proposal proposal(std::optional<Money> budget = std::nullopt) const {
    auto policy = policy_of(clinic.settings);
    policy.budget = budget;
    return propose(clinic, lives, today, policy);
  }
};

}  // namespace

TEST_CASE("Costs of missing and keeping a piece set the target: FSCT example 4.7") {
  // "Fundamentals of Supply Chain Theory", 2nd ed. 2019: h = 1, p = 4, Poisson demand of mean 6:
  // S = 8. Keeping a piece of 100.00 for a week at 52.14 % a year costs 1.00.
  TwoItems given;
  given.clinic.settings.service_target = 0.99;
  given.clinic.settings.costs.holding_rate = 365.0 / 700;
  given.clinic.settings.costs.shortage = euros(4);
  const auto lines = given.proposal().lines;
  REQUIRE(lines.size() == 2);
  CHECK(lines[0].reason.service_target == doctest::Approx(0.8));
  CHECK(lines[0].reason.target_from_costs);
  CHECK(lines[0].target == 8);
}

TEST_CASE("A cost in another currency than the price does not count") {
  TwoItems given;
  given.clinic.settings.costs.shortage = Money{400, Currency{"USD"}};
  CHECK(!given.proposal().lines.front().reason.target_from_costs);
}

TEST_CASE("An item that could wait is not joined when freight is free or not charged") {
  TwoItems given;
  given.add_second(5);
  CHECK(given.proposal().lines.size() == 1);
  given.clinic.suppliers[0].freight = euros(500);
  given.clinic.suppliers[0].free_freight_from = euros(100);
  CHECK(given.proposal().lines.size() == 1);
}

TEST_CASE("Dear freight makes orders cover several order days, with what could wait") {
  TwoItems given;
  given.add_second(3);  // the 0.8 quantile of Poisson demand of mean 2
  REQUIRE(given.proposal().lines.size() == 1);
  given.clinic.suppliers[0].freight = euros(60);
  const auto lines = given.proposal().lines;
  REQUIRE(lines.size() == 2);
  // Interval sqrt(2 K / sum h D) with 20 % a year of 100.00 and 8/14 pieces a day: 61.9 days.
  CHECK(lines[0].reason.order_days_covered == 8);  // of at most 8 weeks
  CHECK(lines[1].reason.joins_order);
  CHECK(lines[1].order_by == today + days{7});
  CHECK(!lines[0].reason.joins_order);
  CHECK(lines[0].target > 8);
}

TEST_CASE("Pieces are added up to free freight when that costs less than the freight") {
  TwoItems given;
  given.add_second(3);
  // Eight pieces at 100.00 are needed. A ninth is kept for 21 days, which costs 1.15.
  given.clinic.suppliers[0].freight = Money{150, Currency{"EUR"}};
  given.clinic.suppliers[0].free_freight_from = euros(900);
  auto proposal = given.proposal();
  int added = 0;
  double value = 0;
  for (const auto& line : proposal.lines) {
    added += line.reason.for_free_freight;
    value += line.quantity * line.unit_cost->major();
  }
  CHECK(value == 900);
  CHECK(added == 1);
  given.clinic.suppliers[0].free_freight_from = euros(9000);
  for (const auto& line : given.proposal().lines) CHECK(line.reason.for_free_freight == 0);
}

TEST_CASE("A budget buys what prevents most shortages, and the rest is held back or cut") {
  TwoItems given;
  const auto all = given.proposal().lines;
  REQUIRE(all.size() == 2);
  const auto proposal = given.proposal(euros(500));
  double value = 0;
  int pieces[2] = {0, 0};
  for (const auto& line : proposal.lines) {
    value += line.quantity * line.unit_cost->major();
    pieces[line.item == ItemCode{"L1"} ? 0 : 1] += line.quantity;
    CHECK(line.reason.left_out_for_budget > 0);
  }
  CHECK(value == 500);
  // Trying all ways to buy five pieces: Poisson needs of mean 6 and 2.
  double best = 1e9;
  int best_first = 0;
  for (int first = 0; first <= 5; ++first) {
    double left = 0;
    for (int n = 0; n < 60; ++n) {
      left += std::max(0, n - first) * poisson(n, 6) + std::max(0, n - (5 - first)) * poisson(n, 2);
    }
    if (left < best) {
      best = left;
      best_first = first;
    }
  }
  CHECK(pieces[0] == best_first);
  CHECK(pieces[1] == 5 - best_first);
}

TEST_CASE("With hardly any money all lines but the most needed are held back") {
  TwoItems given;
  const auto proposal = given.proposal(euros(100));
  REQUIRE(proposal.lines.size() == 1);
  CHECK(proposal.lines[0].item == ItemCode{"L1"});
  CHECK(proposal.lines[0].quantity == 1);
  REQUIRE(proposal.held.size() == 1);
  CHECK(proposal.held[0].line.item == ItemCode{"L2"});
  CHECK(given.proposal(euros(0)).lines.empty());
}

TEST_CASE("Without a price, or in another currency, a line is not limited") {
  TwoItems given;
  given.clinic.items[0].unit_cost.reset();
  given.clinic.items[1].unit_cost = Money{100, Currency{"USD"}};
  CHECK(given.proposal(euros(0)).lines.size() == 2);
}

TEST_CASE("A price break that pays is taken, and told") {
  TwoItems given;
  given.clinic.items[0].price_breaks = {{12, euros(80)}};
  const auto line = given.proposal().lines.front();
  CHECK(line.quantity == 12);
  CHECK(line.unit_cost == euros(80));
  CHECK(line.reason.least_quantity == 8);
  CHECK(line.reason.saves_a_year > 0);
}

}  // namespace supplier_order_test
