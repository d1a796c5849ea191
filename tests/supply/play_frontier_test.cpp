#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/play/draws.hpp"
#include "supply/play/frontier.hpp"

namespace play_frontier_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::play;
using supply::testing::stocked_item;

TEST_CASE("A frontier leaves out what another point beats") {
  const auto best = frontier({{0.9, 300}, {0.5, 100}, {0.8, 350}, {0.9, 280}, {0.95, 500}});
  REQUIRE(best.size() == 3);
  CHECK(best[1].stock == 280);
  CHECK(*stock_at(best, 0.9) == doctest::Approx(280));
  CHECK(*stock_at(best, 0.925) == doctest::Approx(390));
  CHECK(*stock_at(best, 0.5) == doctest::Approx(100));
  CHECK_FALSE(stock_at(best, 0.49));
  CHECK_FALSE(stock_at(best, 0.96));
}

TEST_CASE("Levels by hand: factor, rounding, packs, and nothing for what is not used") {
  Item item = stocked_item("L1");
  const MeanUse use{0.1, 8, 3.5};
  CHECK(min_max_levels(item, use, 1, Rounding::nearest) == Levels{1, 2});
  CHECK(min_max_levels(item, use, 1, Rounding::up) == Levels{2, 3});
  CHECK(min_max_levels(item, use, 4, Rounding::nearest) == Levels{5, 6});
  CHECK(min_max_levels(item, use, 1, Rounding::down) == Levels{0, 1});
  CHECK(min_max_levels(item, use, 0.25, Rounding::down) == up_to(0));
  item.pack_size = 6;
  CHECK(min_max_levels(item, use, 1, Rounding::nearest) == Levels{1, 7});
  const MeanUse busy{3, 8, 3.5};
  CHECK(min_max_levels(item, busy, 1, Rounding::nearest) ==
        Levels{35, 46});  // 34.5 and 10.5 between orders
  CHECK(min_max_levels(item, {0, 8, 3.5}, 4, Rounding::up) == up_to(0));
  CHECK(when_empty_levels(use) == Levels{0, 1});
  CHECK(when_empty_levels({}) == up_to(0));
  CHECK(review_days(*parse_order_days("Tue;Fri")) == doctest::Approx(3.5));
  CHECK(review_days(*parse_order_days("14")) == 14);
  CHECK(review_days({}) == doctest::Approx(1.4));
}

TEST_CASE("By cost a left-over piece weighs with its price and the time between order days") {
  CHECK(by_cost_leftover(0.95, 200, 100, 7) == doctest::Approx(0.10));
  CHECK(by_cost_leftover(0.95, 10, 100, 14) == doctest::Approx(0.01));
  CHECK(by_cost_leftover(1, 400, 100, 7) > 0);
}

TEST_CASE("The present target is among those that are played, once") {
  for (const double present : {0.95, 0.93}) {
    const auto targets = service_targets(present);
    CHECK(std::ranges::is_sorted(targets));
    CHECK(std::ranges::count(targets, present) == 1);
  }
  CHECK(service_targets(0.95).size() + 1 == service_targets(0.93).size());
}

TEST_CASE("Draws are spread evenly, and the same for the same place") {
  constexpr int many = 20000;
  double sum = 0;
  double squares = 0;
  double products = 0;
  for (std::uint64_t i = 0; i < many; ++i) {
    const double draw = uniform_at(1, 2, i);
    sum += draw;
    squares += draw * draw;
    products += draw * uniform_at(1, 3, i);
  }
  CHECK(std::abs(sum / many - 1.0 / 2) < 0.01);
  CHECK(std::abs(squares / many - 1.0 / 3) < 0.01);
  CHECK(std::abs(products / many - 1.0 / 4) < 0.01);
  CHECK(uniform_at(1, 2, 3) == uniform_at(1, 2, 3));
  // FNV-1a of "foobar", a published test vector (from memory).
  CHECK(number_of("foobar") == 0x85944171f73967e8U);
}

}  // namespace play_frontier_test
