#include "supply/pairs.hpp"

#include <cmath>
#include <random>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/demand.hpp"

namespace pairs_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

/// Two liners handed out together, `first_lasted` days and then `apart` more.
void add_pair(Clinic& clinic, const std::string& patient, int issued_days_ago, int lasted,
              std::optional<int> apart) {
  for (int i = 0; i < 2; ++i) {
    Unit unit;
    unit.patient = {patient};
    unit.item = {"L1"};
    unit.serial = fmt::format("{}-{}", patient, i);
    unit.issued_on = today - days{issued_days_ago};
    if (i == 0) {
      unit.ended_on = unit.issued_on + days{lasted};
      unit.end_reason = EndReason::tear;
    } else if (apart) {
      unit.ended_on = unit.issued_on + days{lasted + *apart};
      unit.end_reason = EndReason::returned;
    }
    clinic.units.push_back(unit);
  }
}

}  // namespace

TEST_CASE("How often pairs go together is learned, shrunk to one in twenty") {
  Clinic clinic = clinic_with_item();
  CHECK(chances_together(clinic, today).empty());
  add_pair(clinic, "P1", 400, 300, 0);
  add_pair(clinic, "P2", 400, 300, 2);
  add_pair(clinic, "P3", 400, 300, 40);
  add_pair(clinic, "P4", 400, 300, std::nullopt);
  CHECK(chances_together(clinic, today).at(Kind::liner) == doctest::Approx((2 + 0.05) / 5));
  // Too fresh to know whether the other follows.
  add_pair(clinic, "P5", 300, 299, std::nullopt);
  CHECK(chances_together(clinic, today).at(Kind::liner) == doctest::Approx((2 + 0.05) / 5));
}

TEST_CASE("A pair is the only two of an item on a side, handed out on one day") {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  for (const char* patient : {"P1", "P1", "P2", "P2", "P3", "P4", "P4", "P4"}) {
    add_unit(clinic, lives, patient, 100, 2, 250);
  }
  clinic.units[2].issued_on -= days{30};
  const auto by_item = lives_by_item(clinic, lives);
  const auto pairs = pairs_among(clinic, by_item.at({"L1"}));
  REQUIRE(pairs.size() == 1);
  CHECK(clinic.units[by_item.at({"L1"})[pairs[0][0]]->unit].patient == PatientRef{"P1"});
}

TEST_CASE("Demand of a pair replaced together is that of simulated pairs") {
  // Two parts of wear age 100 with shape 2.5 and scale 250, exchanged together when the first is
  // worn out, within 200 days; 200,000 draws of a generator of its own.
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  for (int i = 0; i < 2; ++i) add_unit(clinic, lives, "P1", 100, 2.5, 250);
  const auto by_item = lives_by_item(clinic, lives);
  const std::vector<ChangingFrom> no_changes;
  FreshCountsCache fresh;
  ItemDemand of_item{today, {by_item.at({"L1"}), no_changes, {}, nullptr, {{0, 1}}, 1.0}, fresh};
  const Pmf made = of_item.until(today + days{200});

  std::mt19937_64 random{7};
  std::exponential_distribution<double> exponential;
  const auto lasts = [&](double age) {
    const double hazard = std::pow(age / 250, 2.5) + exponential(random);
    return 250 * std::pow(hazard, 1 / 2.5) - age;
  };
  constexpr int draws = 200000;
  std::vector<int> seen(8, 0);
  for (int i = 0; i < draws; ++i) {
    std::size_t pairs = 0;
    double at = std::min(lasts(100), lasts(100));
    while (at <= 200 && pairs + 1 < seen.size()) {
      ++pairs;
      at += std::min(lasts(0), lasts(0));
    }
    ++seen[pairs];
  }
  for (std::size_t pairs = 0; pairs < 4; ++pairs) {
    const double chance = static_cast<double>(seen[pairs]) / draws;
    const double error = std::sqrt(chance * (1 - chance) / draws);
    CHECK(std::abs(made.mass()[2 * pairs] - chance) < 4 * error + 1e-4);
    CHECK(made.mass()[2 * pairs + 1] == 0);
  }
}

TEST_CASE("A habit mixes the pair's two counts") {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  for (int i = 0; i < 2; ++i) add_unit(clinic, lives, "P1", 100, 2.5, 250);
  const auto by_item = lives_by_item(clinic, lives);
  const std::vector<ChangingFrom> no_changes;
  FreshCountsCache fresh;
  const auto mass = [&](double together) {
    ItemDemand made{
        today, {by_item.at({"L1"}), no_changes, {}, nullptr, {{0, 1}}, together}, fresh};
    return made.until(today + days{60}).mass()[1];
  };
  CHECK(mass(0.25) == doctest::Approx(0.75 * mass(0)));
  const Pmf apart =
      ItemDemand{today, {by_item.at({"L1"}), no_changes}, fresh}.until(today + days{60});
  CHECK(mass(0) == doctest::Approx(apart.mass()[1]));
}

TEST_CASE("All that a patient wears changes to another item at once") {
  ChangingFrom from;
  from.wearers = {{1, 3}, {2, 1}};
  const Pmf made = from.pieces(0.1);
  CHECK(from.units() == 5);
  CHECK(made.mean() == doctest::Approx(0.5));
  CHECK(made.mass()[1] == doctest::Approx(3 * 0.1 * 0.81 * 0.9));
  CHECK(made.mass()[2] == doctest::Approx(3 * 0.01 * 0.9 * 0.9 + 0.9 * 0.81 * 0.1));
}

}  // namespace pairs_test
