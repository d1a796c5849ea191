#include "supply/season.hpp"

#include <cmath>
#include <numbers>
#include <random>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/demand.hpp"

namespace season_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

/// Poisson counts with `mean` a month and a season of that height that peaks in January; waves add
/// a level that differs from year to year by month.
MonthCounts drawn(unsigned seed, int years, double mean, double height, double waves = 0) {
  std::mt19937 random{seed};
  std::normal_distribution<double> normal;
  MonthCounts counts;
  for (int y = 0; y < years; ++y) {
    MonthCounts::Year year;
    for (std::size_t m = 0; m < 12; ++m) {
      const double angle = 2 * std::numbers::pi * static_cast<double>(m) / 12;
      const double level = (1 + height * std::cos(angle)) * std::exp(waves * normal(random));
      year.days_in_use[m] = 3000;
      year.replaced[m] = std::poisson_distribution<int>{mean * level}(random);
    }
    counts.years.push_back(year);
  }
  return counts;
}

double share_found(int years, double mean, double height, double waves = 0) {
  int found = 0;
  for (unsigned seed = 1; seed <= 400; ++seed) {
    if (chance_without_season(drawn(seed, years, mean, height, waves)) < 0.01) ++found;
  }
  return found / 400.0;
}

}  // namespace

TEST_CASE("Histories without a season seldom seem to have one, even when waves pass through") {
  // 1 % by the test's level; 400 histories leave a standard error of 0.5 %.
  CHECK(share_found(4, 20, 0) < 0.025);
  CHECK(share_found(3, 60, 0, 0.3) < 0.025);
}

TEST_CASE("A season of three years is found") {
  CHECK(share_found(3, 60, 0.35) > 0.95);
}

TEST_CASE("Factors come near the law they were drawn from") {
  const Season season = season_of(drawn(7, 5, 200, 0.3));
  double average = 0;
  for (std::size_t m = 0; m < 12; ++m) {
    const double angle = 2 * std::numbers::pi * static_cast<double>(m) / 12;
    CHECK(season.factors[m] == doctest::Approx(1 + 0.3 * std::cos(angle)).epsilon(0.1));
    average += season.factors[m] / 12;
  }
  CHECK(average == doctest::Approx(1));
}

TEST_CASE("Few years or few replacements show no season") {
  CHECK(chance_without_season(drawn(1, 2, 200, 0.9)) == 1);
  CHECK(chance_without_season(drawn(1, 3, 2, 0.9)) == 1);
}

TEST_CASE("The clock of a season runs by its months") {
  Season season;
  season.factors.fill(1);
  season.factors[11] = 2;  // December
  const Date day = make_date(2026, 11, 25);
  CHECK(season.clock(day, 0) == 0);
  CHECK(season.clock(day, 5) == doctest::Approx(5));
  CHECK(season.clock(day, 6) == doctest::Approx(7));  // the 1st of December counts twice
  CHECK(season.clock(day, 40) == doctest::Approx(5 + 62 + 4));
}

TEST_CASE("Months count whole years only, and replacements by the same item") {
  Clinic clinic = clinic_with_item();
  Unit unit;
  unit.patient = {"P1"};
  unit.item = {"L1"};
  unit.issued_on = make_date(2023, 6, 1);
  unit.ended_on = make_date(2024, 2, 10);
  unit.end_reason = EndReason::hole;
  clinic.units.push_back(unit);
  unit.issued_on = make_date(2024, 2, 10);
  unit.ended_on = make_date(2025, 3, 5);
  unit.end_reason = EndReason::resized;
  clinic.units.push_back(unit);
  const auto counts = month_counts(clinic, today).at(Kind::liner);
  REQUIRE(counts.years.size() == 2);  // 2024 and 2025
  CHECK(counts.years[0].replaced[1] == 1);
  CHECK(counts.years[1].replaced[2] == 0);
  CHECK(counts.years[0].days_in_use[1] == 29);
  CHECK(counts.years[1].days_in_use[2] == 4);
  CHECK(counts.years[1].days_in_use[3] == 0);
}

TEST_CASE("Where the season is high more is needed") {
  Clinic clinic = clinic_with_item();
  std::vector<wear::LifeOfUnit> lives;
  add_poisson_demand(clinic, lives, 0.2, 40);
  Season season;
  season.factors.fill(1);
  season.factors[10] = season.factors[11] = 1.5;
  const auto by_item = lives_by_item(clinic, lives);
  const std::vector<ChangingFrom> none;
  FreshCountsCache fresh;
  ItemDemand demand{today, {by_item.at({"L1"}), none, {}, &season}, fresh};
  CHECK(demand.until(today + days{20}).mean() == doctest::Approx(0.2 * 30).epsilon(1e-4));
}

}  // namespace season_test
