#include "supply/play/item_play.hpp"

#include <cmath>
#include <stdexcept>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/play/draws.hpp"
#include "supply/play/setting.hpp"

namespace item_play_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::play;
using supply::testing::poisson;
using supply::testing::stocked_item;

namespace {

const Date start = make_date(2026, 1, 5);  // a Monday

/// A world with an order day every `every` days and the same lead time for all orders.
ItemWorld world(const Item& item, int days_long, int every, int lead) {
  ItemWorld made{&item, start, start, start + days{days_long - 1}, {}, {}, {}};
  for (int day = 0; day < days_long; day += every) {
    made.order_days.push_back(start + days{day});
    made.lead_days.push_back(lead);
  }
  return made;
}

/// Each day as many requests for one piece as a Poisson law with this mean gives.
void add_poisson_requests(ItemWorld& made, double mean, std::uint64_t seed) {
  for (Date day = made.start; day <= made.end; day += days{1}) {
    const auto counter = static_cast<std::uint64_t>((day - made.start).count());
    double left = uniform_at(seed, 7, counter);
    for (int n = 0; (left -= poisson(n, mean)) > 0; ++n) made.requests.push_back({day, 1});
  }
}

double excess(double mean, int s) {  // E(D - s)+ for Poisson D
  double sum = mean - s;
  for (int n = 0; n < s; ++n) sum += (s - n) * poisson(n, mean);
  return sum;
}

double per_day(std::int64_t sum, const ItemCounts& counts) {
  return static_cast<double>(sum) / counts.days;
}

double fill_rate(const ItemCounts& counts) {
  return static_cast<double>(counts.served_at_once) / counts.pieces;
}

ItemCounts play_up_to(const ItemWorld& made, int target,
                      std::vector<PlacedOrder>* placed = nullptr) {
  const std::vector<Levels> levels{up_to(target)};
  return play_item(made, {levels, target, std::nullopt}, placed);
}

}  // namespace

TEST_CASE("Two patients on a shelf of one, counted by hand") {
  const Item item = stocked_item("L1");
  ItemWorld made = world(item, 20, 7, 3);  // orders on days 0, 7 and 14, there on 3, 10 and 17
  made.requests = {{start + days{1}, 1}, {start + days{2}, 1}, {start + days{8}, 2}};
  const auto counts = play_up_to(made, 1);
  CHECK(counts.requests == 3);
  CHECK(counts.pieces == 4);
  CHECK(counts.served_at_once == 1);
  CHECK(counts.kept_waiting == 2);
  // Asked on day 2, ordered on 7, there on 10. Two of them ordered, of which one goes to the shelf;
  // the third patient is given it then, and waits for the second piece from 8 until 17.
  CHECK(counts.waited_days == 8 + 9);
  CHECK(counts.longest_wait == 9);
  // On day 8 two pieces come on 10, one of which is promised already.
  CHECK(counts.rush == 2);
  CHECK(counts.expired == 0);
  CHECK(counts.stock_days == 1 + 3);  // on day 0, then from 17 on
}

TEST_CASE(
    "A patient who finds nothing needs no rush order when a free piece comes within two days") {
  const Item item = stocked_item("L1");
  ItemWorld made = world(item, 20, 7, 3);
  made.requests = {{start + days{1}, 1}, {start + days{8}, 1}};
  CHECK(play_up_to(made, 1).rush == 0);  // ordered on 7, there on 10
  made.requests = {{start + days{1}, 1}, {start + days{6}, 1}};
  CHECK(play_up_to(made, 1).rush == 1);
}

TEST_CASE("Lots expire after their use-by date, the oldest are handed out first") {
  Item item = stocked_item("L1");
  item.shelf_life_days = 10;
  ItemWorld made = world(item, 30, 30, 5);
  made.order_days = {start + days{3}, start + days{25}};
  made.lead_days = {5, 5};
  made.requests = {{start + days{1}, 1}, {start + days{9}, 1}};
  const std::vector<Levels> levels{up_to(3)};
  std::vector<PlacedOrder> placed;
  const auto counts = play_item(made, {levels, 3, std::nullopt}, &placed);
  // Three fresh ones; one goes on day 1 and one of the old on day 9, so that one of them is left on
  // day 10; the one that came on day 8 is thrown away after day 18.
  CHECK(counts.expired == 2);
  CHECK(counts.served_at_once == 2);
  REQUIRE(placed.size() == 2);
  CHECK(placed[0].quantity == 1);
  CHECK(placed[1].quantity == 3);
  // Stock that will not last is replaced before it has gone.
  const auto lasting = play_item(made, {levels, 3, 8}, &placed);
  CHECK(placed[2].quantity == 3);
  CHECK(lasting.expired == 4);
}

TEST_CASE("Packs and minimum orders are kept, and nothing is counted before it should be") {
  Item item = stocked_item("L1");
  item.pack_size = 6;
  item.min_order = 12;
  ItemWorld made = world(item, 20, 7, 3);
  made.counted_from = start + days{5};
  made.requests = {{start + days{1}, 2}, {start + days{6}, 1}};
  std::vector<PlacedOrder> placed;
  const auto counts = play_up_to(made, 2, &placed);
  CHECK(counts.requests == 1);
  CHECK(counts.days == 15);
  REQUIRE(placed.size() == 1);
  CHECK(placed[0].quantity == 12);
}

TEST_CASE("Base stock reviewed daily keeps the waiting that Poisson theory says") {
  // Expected back-orders E(D - s)+ over the lead time: s = 2 ... 4 for mean 2 and 5 ... 7 for mean
  // 5 are 0.541341, 0.218018, 0.075141 and 0.877337, 0.493298, 0.255481. Fill rate of periodic
  // review: 1 - (E(D_{R+L} - S)+ - E(D_L - S)+) / E(D_R), "Fundamentals of Supply Chain Theory",
  // 2nd ed. 2019, with R one day; what is ordered on an evening is there on the morning after L
  // more days.
  struct Case {
    double mean;
    int target;
    double waiting;
  };
  const Item item = stocked_item("L1");
  constexpr int lead = 20;
  for (const auto& [mean, target, waiting] :
       {Case{2, 2, 0.541341}, Case{2, 3, 0.218018}, Case{2, 4, 0.075141}, Case{5, 5, 0.877337},
        Case{5, 6, 0.493298}, Case{5, 7, 0.255481}}) {
    CHECK(excess(mean, target) == doctest::Approx(waiting).epsilon(1e-5));
    ItemWorld made = world(item, 3000000, 1, lead);
    made.counted_from = start + days{200};
    add_poisson_requests(made, mean / lead, 11);
    const auto counts = play_up_to(made, target);
    CHECK(std::abs(per_day(counts.waiting_days, counts) - waiting) < 0.015 * waiting + 0.002);
    const double before = mean * (lead - 1) / lead;
    const double fill = 1 - (waiting - excess(before, target)) / (mean / lead);
    CHECK(std::abs(fill_rate(counts) - fill) < 0.006);
    // On hand is what is above the demand over the lead time.
    CHECK(std::abs(per_day(counts.stock_days, counts) - (target - mean + waiting)) < 0.015);
  }
}

TEST_CASE("Ordering every week covers a week more") {
  const Item item = stocked_item("L1");
  constexpr int review = 7;
  constexpr int lead = 10;
  constexpr double rate = 0.2;
  ItemWorld made = world(item, 700000, review, lead);
  made.counted_from = start + days{700};
  add_poisson_requests(made, rate, 12);
  for (const int target : {3, 5, 7}) {
    const auto counts = play_up_to(made, target);
    // An order is there on the morning of its tenth day, so nine days of demand go before it.
    const double until = excess(rate * (review + lead - 1), target);
    const double fill = 1 - (until - excess(rate * (lead - 1), target)) / (rate * review);
    CHECK(std::abs(fill_rate(counts) - fill) < 0.006);
  }
}

TEST_CASE("Reorder point and quantity cost what is published") {
  // "Fundamentals of Supply Chain Theory", 2nd ed. 2019, example 5.8: holding 20, waiting 150,
  // order 100, Poisson demand of 1.5 in a period, lead time 2: r = 3, Q = 5 costs
  // 107.92358063314975.
  const Item item = stocked_item("L1");
  constexpr int days_in_period = 100;
  ItemWorld made = world(item, 2000000, 1, 2 * days_in_period);
  made.counted_from = start + days{1000};
  add_poisson_requests(made, 1.5 / days_in_period, 13);
  const std::vector<Levels> levels{{3, 8}};
  std::vector<PlacedOrder> placed;
  const auto counts = play_item(made, {levels, 8, std::nullopt}, &placed);
  const double periods = static_cast<double>(counts.days) / days_in_period;
  const double cost = 20 * per_day(counts.stock_days, counts) +
                      150 * per_day(counts.waiting_days, counts) +
                      100 * static_cast<double>(placed.size()) / periods;
  CHECK(cost == doctest::Approx(107.92358).epsilon(0.015));
}

TEST_CASE("A steady stock lies evenly between the levels") {
  Item item = stocked_item("L1");
  item.pack_size = 6;
  CHECK(steady_stock(item, up_to(3), 0) == 3);
  CHECK(steady_stock(item, up_to(3), 0.999) == 8);
  CHECK(steady_stock(item, {2, 8}, 0.999) == 8);
  CHECK(steady_stock(item, up_to(0), 0) == 0);
}

TEST_CASE("Levels that do not match the order days are refused") {
  const Item item = stocked_item("L1");
  const ItemWorld made = world(item, 20, 7, 3);
  const std::vector<Levels> two{up_to(1), up_to(1)};
  CHECK_THROWS_AS((void)play_item(made, {two, 0, std::nullopt}), std::invalid_argument);
}

}  // namespace item_play_test
