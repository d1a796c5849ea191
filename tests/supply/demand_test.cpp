#include "supply/demand.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace demand_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

TEST_CASE("Demand of few units is what enumeration of all outcomes gives") {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  for (int i = 0; i < 4; ++i) add_unit(clinic, lives, fmt::format("P{}", i), 60.0 * i, 2.5, 250);
  FreshCountsCache fresh;
  std::vector<std::vector<double>> single;
  for (const auto& life : lives) {
    auto mass = replacements(life.life, today + days{60}, fresh).mass();
    mass.resize(6, 0.0);
    single.push_back(mass);
  }
  std::vector<double> wanted(21, 0.0);
  for (int outcome = 0; outcome < 6 * 6 * 6 * 6; ++outcome) {
    double chance = 1;
    std::size_t count = 0;
    for (std::size_t unit = 0, rest = static_cast<std::size_t>(outcome); unit < 4;
         ++unit, rest /= 6) {
      chance *= single[unit][rest % 6];
      count += rest % 6;
    }
    wanted[count] += chance;
  }
  const Pmf made = demand(clinic, lives, {"L1"}, today, 60);
  for (int n = 0; n < 15; ++n) {
    double sum = 0;
    for (int i = 0; i <= n; ++i) sum += wanted[static_cast<std::size_t>(i)];
    CHECK(made.at_most(n) == doctest::Approx(sum).epsilon(1e-9));
  }
}

TEST_CASE("Demand of many exponential lives is Poisson") {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  add_poisson_demand(clinic, lives, 0.2, 40);
  const Pmf made = demand(clinic, lives, {"L1"}, today, 30);
  CHECK(made.mean() == doctest::Approx(6).epsilon(1e-5));
  for (std::size_t n = 0; n < 20; ++n) {
    CHECK(std::abs(made.mass()[n] - poisson(static_cast<int>(n), 6)) < 2e-5);
  }
}

TEST_CASE("An item that nobody uses has no demand") {
  const Clinic clinic = clinic_with_item();
  CHECK(demand(clinic, {}, {"L1"}, today, 365).mean() == 0);
  CHECK(demand(clinic, {}, {"no such item"}, today, 365).mean() == 0);
}

TEST_CASE("A random lead time is common to all units: demand is mixed after it is summed") {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  add_poisson_demand(clinic, lives, 0.5, 10);
  const auto by_item = lives_by_item(clinic, lives);
  FreshCountsCache fresh;
  const std::vector<ChangingFrom> no_changes;
  ItemDemand of_item{today, {by_item.at({"L1"}), no_changes}, fresh};
  // 4 days with chance 1/2 (weight 5) and 14 with chance 1/2 (five receipts ten days late).
  const LeadTime lead{4, false, {{10, 5}}};
  const Pmf made = of_item.until_arrival(today, lead);
  for (int n = 0; n < 10; ++n) {
    const double wanted = 0.5 * poisson(n, 2) + 0.5 * poisson(n, 7);
    CHECK(std::abs(made.mass()[static_cast<std::size_t>(n)] - wanted) < 2e-5);
  }
  CHECK(made.mean() == doctest::Approx(4.5).epsilon(1e-5));
}

TEST_CASE("A size that the limb leaves is needed until then, however far the demand looks") {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  for (int i = 0; i < 6; ++i) add_unit(clinic, lives, fmt::format("P{}", i), 40.0 * i, 2, 200);
  const Pmf month = demand(clinic, lives, {"L1"}, today, 30);
  for (auto& life : lives) life.needed_until = today + days{30};
  // Nothing changes up to that day, and nothing is added after it.
  CHECK(demand(clinic, lives, {"L1"}, today, 20).mean() < month.mean());
  for (const int ahead : {30, 31, 90, 365}) {
    CAPTURE(ahead);
    CHECK(demand(clinic, lives, {"L1"}, today, ahead).mean() ==
          doctest::Approx(month.mean()).epsilon(1e-9));
  }
  for (auto& life : lives) life.needed_until = today;
  CHECK(demand(clinic, lives, {"L1"}, today, 90).mean() == 0);
  // Of one alone that part which is hers.
  for (auto& life : lives) life.needed_until.reset();
  lives[2].needed_until = today;
  std::vector<wear::LifeOfUnit> others = lives;
  others.erase(others.begin() + 2);
  CHECK(demand(clinic, lives, {"L1"}, today, 90).mean() ==
        doctest::Approx(demand(clinic, others, {"L1"}, today, 90).mean()).epsilon(1e-9));
}

TEST_CASE("A price break is not taken for a size that the limbs are about to leave") {
  Clinic clinic = clinic_with_item();
  clinic.items[0].price_breaks = {{24, Money{5000, Currency{"EUR"}}}};
  clinic.items[0].shelf_life_days = 200;
  std::vector<wear::LifeOfUnit> lives;
  for (int i = 0; i < 12; ++i) add_unit(clinic, lives, fmt::format("P{}", i), 150, 3, 160);
  const auto pieces = [&] {
    const auto lines = propose(clinic, lives, today);
    return lines.empty() ? 0 : lines.front().quantity;
  };
  const int all = pieces();
  for (auto& life : lives) life.needed_until = today + days{10};
  const int until_then = pieces();
  CHECK(until_then <= 13);
  CHECK(until_then < all);
}

}  // namespace demand_test
