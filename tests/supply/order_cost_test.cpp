// Textbook values: "Fundamentals of Supply Chain Theory", 2nd ed. 2019 (FSCT), by example number.
#include "supply/order_cost.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/joint_replenishment.hpp"
#include "supply/marginal_value.hpp"
#include "supply/order_size.hpp"

namespace order_cost_test {

using namespace sparewell;
using namespace sparewell::supply;
using doctest::Approx;

namespace {

Pmf poisson_count(double mean) {
  std::vector<double> mass;
  double left = 1;
  for (int n = 0; left > 1e-14 && n < 400; ++n) {
    mass.push_back(testing::poisson(n, mean));
    left -= mass.back();
  }
  mass.back() += left;
  return Pmf{std::move(mass)};
}

const ChanceUsed always_used = [](int) { return 1.0; };

}  // namespace

TEST_CASE("Newsvendor with Poisson demand: FSCT example 4.7") {
  const Pmf demand = poisson_count(6);
  CHECK(demand.least_covering(critical_ratio(4, 1)) == 8);
  CHECK(expected_cost(demand, 8, 1, 4) == Approx(3.570106945770946).epsilon(1e-9));
  CHECK(expected_cost(demand, 5, 1, 4) == Approx(6.590296024616344).epsilon(1e-9));
  const Pmf fifty = poisson_count(50);
  CHECK(fifty.least_covering(critical_ratio(0.70, 0.18)) == 56);
  CHECK(expected_cost(fifty, 56, 0.18, 0.70) == Approx(1.797235211809178).epsilon(1e-8));
}

TEST_CASE("The target of least cost is that of all targets tried one by one") {
  const auto poisson = [](double mean) {
    std::vector<double> mass(60);
    double left = 1;
    for (std::size_t n = 0; n + 1 < mass.size(); ++n) {
      mass[n] = std::exp(static_cast<double>(n) * std::log(mean) - mean -
                         std::lgamma(static_cast<double>(n) + 1));
      left -= mass[n];
    }
    mass.back() = std::max(0.0, left);
    return Pmf{mass};
  };
  for (const double leftover : {0.001, 0.02, 0.3}) {
    const CycleDemand cycle{poisson(4), poisson(5.5)};
    const auto cost = [&](int s) {
      // Missing within the cycle, and what is on hand at its ends, in the mean.
      const double missing = expected_short(cycle.until, s) - expected_short(cycle.before, s);
      const double on_hand = (2 * s - cycle.before.mean() - cycle.until.mean() +
                              expected_short(cycle.before, s) + expected_short(cycle.until, s)) /
                             2;
      return missing + leftover * on_hand;
    };
    int best = 0;
    for (int s = 1; s < 50; ++s) {
      if (cost(s) < cost(best)) best = s;
    }
    CHECK(least_cost_target(cycle, leftover) == best);
    CHECK(best <= cycle.until.least_covering(critical_ratio(1, leftover)));
  }
  // Nothing can be done about what is missing before anything arrives.
  CHECK(least_cost_target({poisson(4), poisson(4)}, 0.1) == 0);
}

TEST_CASE("Expected shortages of base stock with Poisson lead-time demand") {
  // EBO(s) = m - sum over j < s of (1 - F(j)), computed once by hand for the facts of this check.
  CHECK(expected_short(poisson_count(1), 1) == Approx(0.367879).epsilon(1e-5));
  CHECK(expected_short(poisson_count(1), 4) == Approx(0.004349).epsilon(1e-3));
  CHECK(expected_short(poisson_count(2), 3) == Approx(0.218018).epsilon(1e-5));
  CHECK(expected_short(poisson_count(5), 8) == Approx(0.122109).epsilon(1e-5));
  CHECK(expected_short(poisson_count(2), -3) == Approx(5).epsilon(1e-9));
}

TEST_CASE("Economic order quantity: FSCT example 3.1") {
  // K 8, holding 0.225 a piece and year, 1300 a year.
  const double quantity = economic_quantity(1300, 1, 8, 0.225);
  CHECK(quantity == Approx(304.0467800264368));
  CHECK(yearly_cost(quantity, 1300, 1, 8, 0.225) - 1300 == Approx(68.41052550594829));
  CHECK(yearly_cost(250, 1300, 1, 8, 0.225) - 1300 == Approx(69.725));
}

TEST_CASE("Discounts on all units: FSCT example 3.6") {
  // K 8.00, holding 30 % a year, 1300 a year; 0.75, from 400 0.72, from 800 0.68: 800 at 978.60.
  // The inputs are from memory; the result was worked again.
  Item item = supply::testing::stocked_item("L1");
  item.unit_cost = Money{75, Currency{"USD"}};
  item.price_breaks = {{400, Money{72, Currency{"USD"}}}, {800, Money{68, Currency{"USD"}}}};
  OrderCosts costs;
  costs.holding_rate = 0.3;
  costs.line = Money{800, Currency{"USD"}};
  const OrderSize size = order_size(item, 10, 0, 1300.0 / 365, costs, always_used);
  CHECK(size.quantity == 800);
  CHECK(yearly_cost(800, 1300, 0.68, 8, 0.3) == Approx(978.60));
  CHECK(size.least == 10);
  CHECK(size.saves_a_year ==
        Approx(yearly_cost(10, 1300, 75, 800, 0.3) - yearly_cost(800, 1300, 68, 800, 0.3)));
}

TEST_CASE("A price break is not taken for more than a year's use, or what would expire") {
  Item item = supply::testing::stocked_item("L1");
  item.price_breaks = {{20, Money{6000, Currency{"EUR"}}}};
  CHECK(order_size(item, 2, 0, 20.0 / 365, {}, always_used).quantity == 20);
  CHECK(order_size(item, 2, 3, 20.0 / 365, {}, always_used).quantity == 2);
  CHECK(order_size(item, 2, 0, 10.0 / 365, {}, always_used).quantity == 2);
  item.shelf_life_days = 200;
  CHECK(order_size(item, 2, 0, 20.0 / 365, {}, [](int) { return 0.9; }).quantity == 2);
  CHECK(order_size(item, 2, 0, 20.0 / 365, {}, [](int) { return 0.96; }).quantity == 20);
}

TEST_CASE("A small discount does not pay for keeping the pieces") {
  Item item = supply::testing::stocked_item("L1");
  item.price_breaks = {{20, Money{9950, Currency{"EUR"}}}};  // half a percent
  CHECK(order_size(item, 2, 0, 20.0 / 365, {}, always_used).quantity == 2);
}

TEST_CASE("What the need alone makes expire is told") {
  Item item = supply::testing::stocked_item("L1");
  item.min_order = 10;
  item.shelf_life_days = 100;
  const OrderSize size =
      order_size(item, 2, 1, 0.02, {}, [](int pieces) { return pieces == 11 ? 0.3 : 1.0; });
  CHECK(size.quantity == 10);
  CHECK(size.chance_expires == Approx(0.7));
}

TEST_CASE("Joint replenishment: the textbook's case of three items") {
  // FSCT: order cost 600, line costs 120, 840, 300, holding 160, 20, 50, demand 1 each: interval
  // 3.103164454170876, multiples 1, 3, 1, cost 837.8544026261366.
  const JointPlan plan = joint_replenishment(600, {{120, 160, 1}, {840, 20, 1}, {300, 50, 1}});
  CHECK(plan.interval == Approx(3.103164454170876));
  CHECK(plan.multiples == std::vector<int>{1, 3, 1});
  CHECK(plan.cost == Approx(837.8544026261366));
}

TEST_CASE("A limited sum is spent as in the worked run of marginal analysis") {
  // Poisson demand, means 1, 2, 0.5 and prices 5, 10, 1: C A C B B A B A, with these sums and
  // shortages (worked by an independent script).
  const Pmf a = poisson_count(1);
  const Pmf b = poisson_count(2);
  const Pmf c = poisson_count(0.5);
  const auto bought = spend(47, {{&a, 0, 5, 1, 1, 3}, {&b, 0, 10, 1, 1, 3}, {&c, 0, 1, 1, 1, 2}});
  CHECK(bought.order == std::vector<std::size_t>{2, 0, 2, 1, 1, 0, 1, 0});
  CHECK(bought.spent == Approx(47));
  const double left = expected_short(a, bought.pieces[0]) + expected_short(b, bought.pieces[1]) +
                      expected_short(c, bought.pieces[2]);
  CHECK(left == Approx(0.257681).epsilon(1e-5));
}

TEST_CASE("Marginal analysis finds the best way to spend, as trying all ways shows") {
  const Pmf a = poisson_count(1.3);
  const Pmf b = poisson_count(0.4);
  const Pmf c = poisson_count(2.2);
  const std::vector<Purchase> all{{&a, 0, 3, 1, 1, 5}, {&b, 0, 3, 1, 1, 5}, {&c, 1, 3, 1, 1, 5}};
  const auto bought = spend(12, all);
  const auto left = [&](int x, int y, int z) {
    return expected_short(a, x) + expected_short(b, y) + expected_short(c, 1 + z);
  };
  double best = 1e9;
  for (int x = 0; x <= 4; ++x) {
    for (int y = 0; x + y <= 4; ++y) best = std::min(best, left(x, y, 4 - x - y));
  }
  CHECK(left(bought.pieces[0], bought.pieces[1], bought.pieces[2]) == Approx(best));
}

TEST_CASE("What does not fit is passed over for what does") {
  const Pmf a = poisson_count(3);
  const Pmf b = poisson_count(0.1);
  const auto bought = spend(10, {{&a, 0, 50, 1, 1, 3}, {&b, 0, 5, 2, 1, 4}});
  CHECK(bought.pieces == std::vector<int>{0, 2});
  CHECK(bought.spent == Approx(10));
}

}  // namespace order_cost_test
