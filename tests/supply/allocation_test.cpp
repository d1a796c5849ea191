#include "supply/allocation.hpp"

#include <algorithm>
#include <functional>
#include <random>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/order_cost.hpp"

namespace allocation_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

Pmf poisson_demand(double mean) {
  std::vector<double> mass;
  double sum = 0;
  for (int n = 0; n < 40; ++n) sum += mass.emplace_back(mean > 0 ? poisson(n, mean) : n == 0);
  mass.back() = std::max(0.0, mass.back() + 1 - sum);
  return Pmf{mass};
}

/// Pieces expected to be missing plus `each` for every piece that is moved.
double cost_of(const std::vector<PlaceBalance>& places, const std::vector<int>& changes,
               double each) {
  double cost = 0;
  for (std::size_t p = 0; p < places.size(); ++p) {
    cost += expected_short(*places[p].demand, places[p].position + changes[p]) +
            each * std::max(0, changes[p]);
  }
  return cost;
}

/// The least cost over every way of sharing, by trying them all.
double least_cost(const std::vector<PlaceBalance>& places, double each) {
  int all = 0;
  for (const auto& place : places) all += place.movable;
  double least = cost_of(places, std::vector<int>(places.size(), 0), each);
  std::vector<int> changes(places.size(), 0);
  const std::function<void(std::size_t, int)> try_all = [&](std::size_t p, int left) {
    if (p + 1 == places.size()) {
      changes[p] = -left;
      if (changes[p] >= -places[p].movable) least = std::min(least, cost_of(places, changes, each));
      return;
    }
    for (changes[p] = -places[p].movable; changes[p] <= all; ++changes[p]) {
      try_all(p + 1, left + changes[p]);
    }
  };
  try_all(0, 0);
  return least;
}

}  // namespace

TEST_CASE("No other way of sharing leaves fewer pieces missing: all of them tried") {
  std::mt19937 random{20261125};
  for (int round = 0; round < 300; ++round) {
    const std::size_t count = 2 + random() % 3;
    std::vector<Pmf> demands;
    std::vector<PlaceBalance> places(count);
    for (std::size_t p = 0; p < count; ++p) {
      demands.push_back(poisson_demand(0.1 * static_cast<double>(random() % 40)));
    }
    for (std::size_t p = 0; p < count; ++p) {
      const int on_hand = static_cast<int>(random() % 6);
      const int reserved = static_cast<int>(random() % 3);
      const int in_transit = static_cast<int>(random() % 2);
      places[p] = {on_hand + in_transit - reserved, std::max(0, on_hand - reserved), &demands[p]};
    }
    const double gain = round % 2 == 0 ? 0.02 : 0.2;
    const auto changes = best_changes(places, gain);
    int sum = 0;
    for (std::size_t p = 0; p < count; ++p) {
      sum += changes[p];
      CHECK(changes[p] >= -places[p].movable);
    }
    CHECK(sum == 0);
    CHECK(cost_of(places, changes, gain) ==
          doctest::Approx(least_cost(places, gain)).epsilon(1e-12));
  }
}

TEST_CASE(
    "A piece goes only where it helps by as much as was asked, and from where it is not held") {
  const Pmf none = poisson_demand(0);
  const Pmf some = poisson_demand(0.5);  // P(N > 0) = 0.3935, P(N > 1) = 0.0902, from exp(-0.5)
  CHECK(best_changes({{5, 5, &none}, {0, 0, &some}}, 0.02) == std::vector<int>{-2, 2});
  CHECK(best_changes({{5, 5, &none}, {0, 0, &some}}, 0.1) == std::vector<int>{-1, 1});
  CHECK(best_changes({{5, 5, &none}, {0, 0, &some}}, 0.4) == std::vector<int>{0, 0});
  CHECK(best_changes({{5, 0, &none}, {0, 0, &some}}, 0.02) == std::vector<int>{0, 0});
  // Two promised pieces are missing there: they count in full.
  CHECK(best_changes({{5, 5, &none}, {-2, 0, &none}}, 0.02) == std::vector<int>{-2, 2});
  CHECK(best_changes({{1, 1, &some}}, 0.02) == std::vector<int>{0});
}

}  // namespace allocation_test
