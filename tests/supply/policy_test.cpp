#include "supply/policy.hpp"

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace policy_test {

using namespace sparewell;
using namespace sparewell::supply;

TEST_CASE("Orders are whole packs and at least the minimum") {
  Item item;
  CHECK(order_quantity(item, 3) == 3);
  item.pack_size = 5;
  CHECK(order_quantity(item, 3) == 5);
  CHECK(order_quantity(item, 5) == 5);
  CHECK(order_quantity(item, 6) == 10);
  item.min_order = 12;
  CHECK(order_quantity(item, 6) == 15);
  item.pack_size = 1;
  CHECK(order_quantity(item, 6) == 12);
}

TEST_CASE("The price is that of the largest break reached") {
  // Breaks 0/400/800 at 0.75/0.72/0.68: the price schedule of "Fundamentals of Supply Chain
  // Theory", 2nd ed., example 3.6 (inputs from memory).
  Item item = testing::stocked_item("L1");
  item.unit_cost = Money{75, Currency{"USD"}};
  item.price_breaks = {{800, Money{68, Currency{"USD"}}}, {400, Money{72, Currency{"USD"}}}};
  CHECK(unit_cost_at(item, 399)->minor == 75);
  CHECK(unit_cost_at(item, 400)->minor == 72);
  CHECK(unit_cost_at(item, 799)->minor == 72);
  CHECK(unit_cost_at(item, 800)->minor == 68);
}

TEST_CASE("A catalogue without a cost gives none, unless a break is reached") {
  Item item;
  CHECK_FALSE(unit_cost_at(item, 5));
  item.price_breaks = {{10, Money{500, {}}}};
  CHECK_FALSE(unit_cost_at(item, 9));
  CHECK(unit_cost_at(item, 10)->minor == 500);
}

}  // namespace policy_test
