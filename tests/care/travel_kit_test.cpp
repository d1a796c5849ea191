#include "care/travel_kit.hpp"

#include <algorithm>
#include <cmath>
#include <random>
#include <stdexcept>

#include <doctest/doctest.h>

namespace travel_kit_test {

using namespace sparewell;
using namespace sparewell::care;
using doctest::Approx;

namespace {

supply::Pmf poisson(double mean) {
  std::vector<double> mass;
  double term = std::exp(-mean);
  double sum = 0;
  for (int n = 0; n < 40; ++n) {
    mass.push_back(term);
    sum += term;
    term *= mean / (n + 1);
  }
  mass.back() += std::max(0.0, 1 - sum);
  return supply::Pmf{std::move(mass)};
}

std::vector<SpareNeed> some_needs(std::mt19937& random, int count) {
  std::uniform_real_distribution<double> mean{0.02, 1.2};
  std::vector<SpareNeed> made;
  for (int i = 0; i < count; ++i) {
    made.push_back({poisson(mean(random)), static_cast<int>(random() % 2),
                    static_cast<double>(5 + random() % 300)});
  }
  return made;
}

/// Calls `look` with every kit of at most `most` spares a need.
template <class Look>
void every_kit(std::vector<int>& spares, std::size_t need, int most, const Look& look) {
  if (need == spares.size()) return look(spares);
  for (int n = 0; n <= most; ++n) {
    spares[need] = n;
    every_kit(spares, need + 1, most, look);
  }
  spares[need] = 0;
}

double cost_of(const std::vector<SpareNeed>& needs, const std::vector<int>& spares) {
  double cost = 0;
  for (std::size_t i = 0; i < needs.size(); ++i) cost += needs[i].cost * spares[i];
  return cost;
}

}  // namespace

TEST_CASE("Assurance is the chance of no more failures than spares, over all functions") {
  // Poisson chances by hand: exp(-0.5) (1 + 0.5) and exp(-0.2).
  const std::vector<SpareNeed> needs{{poisson(0.5), 0, 1}, {poisson(0.2), 0, 1}};
  CHECK(assurance(needs[0], 1) == Approx(0.9097959896));
  CHECK(assurance(needs, std::vector{1, 0}) == Approx(0.9097959896 * 0.8187307531));
  const SpareNeed along{poisson(0.5), 1, 1};  // a second one that is worn in turn
  CHECK(assurance(along, 0) == Approx(0.9097959896));
}

TEST_CASE("The cheapest kit is that of trying every kit") {
  std::mt19937 random{7};
  for (int round = 0; round < 100; ++round) {
    const auto needs = some_needs(random, 4);
    const double wanted = round % 2 == 0 ? 0.95 : 0.99;
    double least = HUGE_VAL;
    std::vector<int> spares(needs.size(), 0);
    every_kit(spares, 0, 8, [&](const std::vector<int>& kit) {
      if (assurance(needs, kit) >= wanted) least = std::min(least, cost_of(needs, kit));
    });
    const auto kit = cheapest_kit(needs, wanted);
    REQUIRE(kit.reached);
    CHECK(kit.cost == Approx(least));
    CHECK(kit.assurance >= wanted);
  }
}

TEST_CASE("On the way of marginal analysis no kit of the same cost is surer") {
  // The property for which it is known: every kit that it meets is undominated.
  std::mt19937 random{11};
  for (int round = 0; round < 60; ++round) {
    const auto needs = some_needs(random, 3);
    const auto met = kit_by_margins(needs, round % 2 == 0 ? 0.9 : 0.98);
    std::vector<int> spares(needs.size(), 0);
    every_kit(spares, 0, 7, [&](const std::vector<int>& kit) {
      if (cost_of(needs, kit) <= met.cost) CHECK(assurance(needs, kit) <= met.assurance + 1e-12);
    });
  }
}

TEST_CASE("What cannot be reached is said, and what is reached needs no spare") {
  const std::vector<SpareNeed> hopeless{{poisson(20), 0, 1}};
  const auto none = cheapest_kit(hopeless, 0.99);
  CHECK_FALSE(none.reached);
  CHECK(none.spares == std::vector{most_spares});
  const std::vector<SpareNeed> sure{{poisson(0.001), 0, 1}};
  CHECK(cheapest_kit(sure, 0.95).spares == std::vector{0});
  CHECK(cheapest_kit({}, 0.95).reached);
  CHECK_THROWS_AS((void)kit_by_margins(sure, 1), std::invalid_argument);
}

}  // namespace travel_kit_test
