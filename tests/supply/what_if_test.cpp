#include "supply/what_if.hpp"

#include <cmath>
#include <stdexcept>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/proposal.hpp"

namespace what_if_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;
using doctest::Approx;

namespace {

/// One piece every two days on average, five there, ordered on Wednesdays, a week to arrive.
struct Given {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  OrderPolicy policy;

  Given() {
    clinic.suppliers[0].currency = Currency{"EUR"};
    add_poisson_demand(clinic, lives, 0.5, 200);
    add_stock(clinic, 5);
    policy = policy_of(clinic.settings);
  }
  [[nodiscard]] Outcome outcome() const { return what_if(clinic, lives, today, policy); }
};

double poisson_short(double mean, int there) {
  double sum = 0;
  for (int n = there + 1; n < 120; ++n) sum += (n - there) * poisson(n, mean);
  return sum;
}

}  // namespace

TEST_CASE("Shortages before and after the order are those of Poisson demand") {
  // E (N - s)+ summed by hand: 7 days until the order arrives, 14 until the one after it.
  Given given;
  const auto ordered = propose(given.clinic, given.lives, today).front().quantity;
  const Outcome now = given.outcome();
  CHECK(now.lines == 1);
  CHECK(now.pieces == ordered);
  CHECK(now.goods.at(Currency{"EUR"}) == 10000 * ordered);
  CHECK(now.short_before == Approx(poisson_short(3.5, 5)).epsilon(1e-3));
  CHECK(now.short_after == Approx(poisson_short(7, 5 + ordered)).epsilon(1e-3));
  CHECK(now.items_below_target == 0);
}

TEST_CASE("Within a budget only what can be paid for arrives") {
  // Three pieces of 100 EUR: E (N - s)+ summed by hand for a shelf of eight.
  Given given;
  given.policy.budget = Money{30000, Currency{"EUR"}};
  const Outcome now = given.outcome();
  CHECK(now.pieces == 3);
  CHECK(now.short_after == Approx(poisson_short(7, 8)).epsilon(1e-3));
  CHECK(now.items_below_target == 1);
}

TEST_CASE("Waiting a week leaves the shelf to last a week longer") {
  Given given;
  given.policy.order_on = today + days{7};
  const Outcome later = given.outcome();
  CHECK(later.short_before == Approx(poisson_short(7, 5)).epsilon(1e-3));
  CHECK(later.pieces > Given{}.outcome().pieces);
}

TEST_CASE("Without the supplier nothing is ordered, and the items at risk are told") {
  Given given;
  given.policy.without = {{"Example Supplies"}};
  Item other = stocked_item("L1b", "Other Supplies");
  given.clinic.items.push_back(other);
  other.code = {"S1"};
  other.kind = Kind::sleeve;
  given.clinic.items.push_back(other);
  const Outcome lost = given.outcome();
  CHECK(lost.lines == 0);
  REQUIRE(lost.at_risk.size() == 1);
  CHECK(lost.at_risk[0].chance_short == Approx(1 - 0.30071).epsilon(1e-3));  // Poisson 7, at most 5
  CHECK(lost.at_risk[0].alternatives == std::vector<ItemCode>{{"L1b"}});
  // The first day with P(N > 5) >= 0.1: mean 3.15 (3.152 gives 0.1000).
  CHECK(lost.at_risk[0].runs_out == today + days{7});
}

TEST_CASE("A lower target orders less and leaves more to chance") {
  Given given;
  const Outcome high = given.outcome();
  given.policy.service_target = 0.7;
  const Outcome low = given.outcome();
  CHECK(low.pieces < high.pieces);
  CHECK(low.short_after > high.short_after);
  CHECK(low.short_before == Approx(high.short_before));
}

TEST_CASE("Freight is counted where an order does not reach what frees it") {
  Given given;
  given.clinic.suppliers[0].freight = Money{1250, Currency{"EUR"}};
  CHECK(given.outcome().freight.at(Currency{"EUR"}) == 1250);
  given.clinic.suppliers[0].free_freight_from = Money{10000, Currency{"EUR"}};
  CHECK(given.outcome().freight.empty());
}

TEST_CASE("What a day's outlook keeps does not change what another policy decides") {
  // propose and what_if under the same policy, each from nothing.
  Given given;
  add_poisson_demand(given.clinic, given.lives, 0.3, 50, "L2");
  given.clinic.items.push_back(testing::stocked_item("L2"));
  given.clinic.suppliers[0].freight = Money{3000, Currency{"EUR"}};
  given.clinic.suppliers[0].free_freight_from = Money{120000, Currency{"EUR"}};
  const auto same = [&](const DecidedOrders& decided, const OrderPolicy& policy) {
    const auto proposal = propose(given.clinic, given.lives, today, policy);
    REQUIRE(decided.proposal.lines.size() == proposal.lines.size());
    for (std::size_t i = 0; i < proposal.lines.size(); ++i) {
      CHECK(decided.proposal.lines[i].item == proposal.lines[i].item);
      CHECK(decided.proposal.lines[i].quantity == proposal.lines[i].quantity);
      CHECK(decided.proposal.lines[i].chance_short == proposal.lines[i].chance_short);
      CHECK(decided.proposal.lines[i].reason.service_target ==
            proposal.lines[i].reason.service_target);
    }
    const Outcome outcome = what_if(given.clinic, given.lives, today, policy);
    CHECK(decided.outcome.short_before == outcome.short_before);
    CHECK(decided.outcome.short_after == outcome.short_after);
    CHECK(decided.outcome.goods == outcome.goods);
    CHECK(decided.outcome.freight == outcome.freight);
    CHECK(decided.outcome.items_below_target == outcome.items_below_target);
  };
  OrderOutlook outlook{given.clinic, given.lives, today, std::nullopt};
  for (const double target : {0.95, 0.8, 0.995, 0.95}) {
    auto policy = given.policy;
    policy.service_target = target;
    same(decide(outlook, policy), policy);
    policy.budget = Money{50000, Currency{"EUR"}};
    same(decide(outlook, policy), policy);
  }
  auto later = given.policy;
  later.order_on = today + days{3};
  CHECK_THROWS_AS((void)decide(outlook, later), std::invalid_argument);
  OrderOutlook of_later{given.clinic, given.lives, today, later.order_on};
  same(decide(of_later, later), later);
}

}  // namespace what_if_test
