#include "supply/proposal.hpp"

#include <algorithm>
#include <cmath>
#include <random>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace proposal_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

/// Demand of L1 is Poisson with mean 6 from today until what is ordered next Wednesday (seven days
/// ahead) has arrived (seven days more).
struct Steady {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;

  Steady() { add_poisson_demand(clinic, lives, 6.0 / 14.0, 60); }
  [[nodiscard]] std::vector<ProposalLine> lines() const { return propose(clinic, lives, today); }
};

double poisson_more_than(int n, double mean) {
  double sum = 1;
  for (int i = 0; i <= n; ++i) sum -= poisson(i, mean);
  return sum;
}

}  // namespace

TEST_CASE("The target covers the demand until the next order arrives") {
  Steady given;
  given.clinic.settings.service_target = 0.8;
  const auto lines = given.lines();
  REQUIRE(lines.size() == 1);
  // "Fundamentals of Supply Chain Theory", 2nd ed. 2019, example 4.7: mean 6, fractile 0.8: S = 8.
  CHECK(lines[0].target == 8);
  CHECK(lines[0].quantity == 8);
  CHECK(lines[0].place == "main store");
  CHECK(lines[0].reason.next_order_day == today + days{7});
  CHECK(lines[0].reason.protected_until == today + days{14});
  CHECK(lines[0].reason.lead_days == 7);
  CHECK(lines[0].reason.expected_demand == doctest::Approx(6).epsilon(1e-5));
  CHECK(std::abs(lines[0].chance_short - (1 - std::exp(-6.0))) < 2e-5);
  CHECK(lines[0].order_by == today);
}

TEST_CASE("Stock and orders count, reservations are taken off, and a full shelf orders nothing") {
  Steady given;
  given.clinic.settings.service_target = 0.8;
  add_stock(given.clinic, 4);
  given.clinic.order_lines = {placed(3, today - days{1})};
  given.clinic.reservations = {{{"P9"}, {"L1"}, "main store", 2, std::nullopt}};
  auto lines = given.lines();
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].on_hand == 4);
  CHECK(lines[0].on_order == 3);
  CHECK(lines[0].reserved == 2);
  CHECK(lines[0].quantity == 3);
  CHECK(std::abs(lines[0].chance_short - poisson_more_than(5, 6)) < 2e-5);
  add_stock(given.clinic, 3);
  CHECK(given.lines().empty());
}

TEST_CASE("Lots that expire before the next order arrives and quarantined ones are replaced") {
  Steady given;
  given.clinic.settings.service_target = 0.8;
  add_stock(given.clinic, 8, today + days{13});
  add_stock(given.clinic, 8, std::nullopt, "quarantine");
  auto lines = given.lines();
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].quantity == 8);
  CHECK(lines[0].reason.uncounted.size() == 2);
  given.clinic.shelf[0].lot.use_by = today + days{14};
  CHECK(given.lines().empty());
}

TEST_CASE("Quantities are rounded to packs and minimum orders and priced at the break reached") {
  Steady given;
  given.clinic.settings.service_target = 0.8;
  Item& item = given.clinic.items[0];
  item.pack_size = 5;
  item.price_breaks = {{10, Money{9000, Currency{"EUR"}}}};
  const auto lines = given.lines();
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].quantity == 10);
  CHECK(lines[0].unit_cost->minor == 9000);
  CHECK(lines[0].reason.needed == 8);
  CHECK(lines[0].reason.pack_size == 5);
}

TEST_CASE("A supplier that is seldom ordered from is given more to cover") {
  Steady given;
  given.clinic.suppliers[0].order_days = *parse_order_days("28");
  const auto lines = given.lines();
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].reason.protected_until == today + days{35});
  CHECK(lines[0].reason.expected_demand == doctest::Approx(15).epsilon(1e-5));
}

TEST_CASE("Where any day is an order day, the order-by date is the last that keeps the target") {
  Steady given;
  given.clinic.suppliers[0].order_days = *parse_order_days("28");
  given.clinic.settings.service_target = 0.8;
  add_stock(given.clinic, 11);
  const auto lines = given.lines();
  REQUIRE(lines.size() == 1);
  const auto covered = [&](Date from) {
    const double mean = (days_between(today, from) + 7) * 6.0 / 14.0;
    return 1 - poisson_more_than(11, mean) >= 0.8;
  };
  CHECK(lines[0].order_by > today);
  CHECK(covered(lines[0].order_by));
  CHECK_FALSE(covered(lines[0].order_by + days{1}));
}

TEST_CASE("No users and no promises need no order; a promise beyond the position does") {
  Clinic clinic = clinic_with_item();
  CHECK(propose(clinic, {}, today).empty());
  clinic.reservations = {{{"P1"}, {"L1"}, "main store", 2, std::nullopt}};
  add_stock(clinic, 1);
  const auto lines = propose(clinic, {}, today);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].quantity == 1);
  CHECK(lines[0].target == 0);
  CHECK(lines[0].chance_short == 1);
}

TEST_CASE("The needs are named by chance, the most likely first, with those left out counted") {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  for (int i = 0; i < 30; ++i)
    add_unit(clinic, lives, fmt::format("P{}", 100 + i), 5.0 * i, 3, 200);
  add_unit(clinic, lives, "P999", 0, 4, 900);  // almost certainly lasts
  const auto lines = propose(clinic, lives, today);
  REQUIRE(lines.size() == 1);
  const auto& reason = lines[0].reason;
  REQUIRE(reason.needs.size() == 20);
  CHECK(reason.needs[0].patient.text == "P129");
  CHECK(reason.needs[0].median);
  CHECK(*reason.needs[0].early < *reason.needs[0].median);
  CHECK(std::ranges::is_sorted(reason.needs, std::ranges::greater{}, &ExpectedNeed::chance));
  CHECK(reason.more_needs > 0);
  CHECK(reason.more_needs <= 10);
}

TEST_CASE("Lines are sorted by supplier and item; an item without a supplier is still proposed") {
  Steady given;
  given.clinic.items.push_back(stocked_item("K2", ""));
  given.clinic.items.push_back(stocked_item("A1", "Zeta Example"));
  add_poisson_demand(given.clinic, given.lives, 1, 10, "K2");
  add_poisson_demand(given.clinic, given.lives, 1, 10, "A1");
  const auto lines = given.lines();
  REQUIRE(lines.size() == 3);
  CHECK(lines[0].item.text == "K2");
  CHECK(lines[0].supplier.empty());
  CHECK(lines[1].item.text == "L1");
  CHECK(lines[2].item.text == "A1");
}

TEST_CASE("The order of the records does not change the proposal") {
  Steady given;
  add_stock(given.clinic, 1, std::nullopt, "main store", "A");
  add_stock(given.clinic, 2, today, "main store", "B");
  add_stock(given.clinic, 2, today, "branch", "C");
  for (int i = 0; i < 6; ++i) given.clinic.order_lines.push_back(received_after(5 + i, i));
  given.clinic.items.push_back(stocked_item("L2"));
  add_poisson_demand(given.clinic, given.lives, 0.2, 30, "L2");
  const auto one = given.lines();

  std::mt19937 random{3};
  Clinic shuffled = given.clinic;
  std::vector<std::size_t> order(given.lives.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::ranges::shuffle(order, random);
  std::vector<wear::LifeOfUnit> lives;
  for (std::size_t i = 0; i < order.size(); ++i) {
    shuffled.units[i] = given.clinic.units[order[i]];
    lives.push_back({i, given.lives[order[i]].life});
  }
  std::ranges::shuffle(shuffled.shelf, random);
  std::ranges::shuffle(shuffled.order_lines, random);
  std::ranges::reverse(shuffled.items);
  const auto other = propose(shuffled, lives, today);

  REQUIRE(one.size() == other.size());
  for (std::size_t i = 0; i < one.size(); ++i) {
    CHECK(one[i].item == other[i].item);
    CHECK(one[i].quantity == other[i].quantity);
    CHECK(one[i].order_by == other[i].order_by);
    CHECK(one[i].chance_short == other[i].chance_short);
    CHECK(one[i].reason.expected_demand == other[i].reason.expected_demand);
    REQUIRE(one[i].reason.needs.size() == other[i].reason.needs.size());
    for (std::size_t n = 0; n < one[i].reason.needs.size(); ++n) {
      CHECK(one[i].reason.needs[n].patient == other[i].reason.needs[n].patient);
    }
    REQUIRE(one[i].reason.uncounted.size() == other[i].reason.uncounted.size());
    for (std::size_t n = 0; n < one[i].reason.uncounted.size(); ++n) {
      CHECK(one[i].reason.uncounted[n].level == other[i].reason.uncounted[n].level);
    }
  }
}

TEST_CASE("A supplier that delivers late is given a larger target") {
  Steady given;
  const int before = given.lines()[0].target;
  for (int i = 0; i < 20; ++i) given.clinic.order_lines.push_back(received_after(21, i));
  const auto lines = given.lines();
  CHECK(lines[0].target > before);
  CHECK(lines[0].reason.receipts_seen == 20);
  // By hand: the supplier's record (5 * 7 + 20 * 21) / 25 = 18.2; with the item's own
  // (10 * 18.2 + 20 * 21) / 30 = 20.07.
  CHECK(lines[0].reason.lead_days == 20);
}

}  // namespace proposal_test
