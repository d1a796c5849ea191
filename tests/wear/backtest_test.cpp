#include "wear/backtest.hpp"

#include <array>
#include <cmath>
#include <random>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "wear/small_clinic.hpp"
#include "wear/unit_life.hpp"

namespace backtest_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;

namespace {

constexpr int last_day = 1400;
constexpr double kneeling = 0.2;  // log wear rate for one more hour a day
const Date today = day_zero + days{last_day};

/// Liners one after another for each patient, by a Weibull law of shape 2 and scale 250 in days of
/// reference use, which kneeling uses up faster; one in seven is lost before.
Clinic simulated_clinic(int patients, double kneeling_effect, unsigned seed) {
  Clinic clinic = small_clinic();
  std::minstd_rand0 random{seed};
  const auto uniform = [&] { return static_cast<double>(random()) / 2147483647.0; };
  for (int i = 0; i < patients; ++i) {
    const std::string ref = fmt::format("P{}", i);
    Usage stated = usage(ref, 0);
    stated.kneeling_hours = std::floor(5 * uniform());
    clinic.usage.push_back(stated);
    const double rate = std::exp(kneeling_effect * *stated.kneeling_hours);
    for (int day = static_cast<int>(100 * uniform()); day < last_day;) {
      const double life = 250 * std::sqrt(-std::log(uniform())) / rate;
      const int worn = day + std::max(1, static_cast<int>(std::lround(life)));
      const int lost =
          uniform() < 0.15 ? day + 1 + static_cast<int>(200 * uniform()) : last_day + 1;
      const int end = std::min(worn, lost);
      const auto reason = worn <= lost ? EndReason::hole : EndReason::lost;
      clinic.units.push_back(end > last_day ? unit(ref, "L", day)
                                            : unit(ref, "L", day, end, reason));
      day = end;
    }
  }
  return clinic;
}

/// Beliefs that are the law of simulated_clinic, held so firmly that no data moves them.
PriorTable priors_that_know(double kneeling_effect) {
  PriorTable priors = plain_priors(1e-4, 1e-4);
  for (LifePrior& row : priors.lives) row.median_days = 250 * std::sqrt(std::log(2.0));
  for (FactorPrior& row : priors.factors) {
    if (row.factor == Factor::kneeling_hours) row.life_ratio = std::exp(-kneeling_effect);
  }
  // Its patients do not differ beyond their factors.
  priors.persons.clear();
  for (std::size_t kind = 0; kind < words<Kind>().size(); ++kind) {
    priors.persons.push_back({static_cast<Kind>(kind), 1e-6, 1e-4, "the simulated law"});
  }
  return priors;
}

Backtest backtest_of(const Clinic& clinic, const BacktestPlan& plan = {}) {
  auto made = run_backtest(clinic, plain_priors(), today, plan);
  REQUIRE(made);
  return *made;
}

void check_same(const BacktestScores& one, const BacktestScores& other) {
  CHECK(one.units == other.units);
  CHECK(one.events == other.events);
  for (std::size_t i = 0; i < coverage_levels.size(); ++i) {
    CHECK(one.coverage[i]->share == other.coverage[i]->share);
    CHECK(one.coverage[i]->low == other.coverage[i]->low);
    CHECK(one.pinball[i]->sparewell == other.pinball[i]->sparewell);
    CHECK(one.pinball[i]->clinic_weibull == other.pinball[i]->clinic_weibull);
  }
  CHECK(one.crps->sparewell == other.crps->sparewell);
  CHECK(one.crps->calendar == other.crps->calendar);
  CHECK(one.crps->clinic_weibull == other.crps->clinic_weibull);
}

}  // namespace

TEST_CASE("Forecasts go out evenly from 40 % of the history to a horizon before today") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("A", "L", 100), unit("A", "L", 0)};
  const Date end = day_zero + days{1000};
  const auto origins = backtest_origins(clinic, end, {5, 200});
  REQUIRE(origins.size() == 5);
  for (int i = 0; i < 5; ++i) {
    CHECK(days_between(day_zero, origins[static_cast<std::size_t>(i)]) == 400 + 100 * i);
  }
  CHECK(backtest_origins(clinic, end, {1, 200}) == std::vector{day_zero + days{800}});
  CHECK(backtest_origins(clinic, end, {5, 600}) == std::vector{day_zero + days{400}});
  CHECK(backtest_origins(clinic, end, {5, 601}).empty());
  CHECK(backtest_origins(clinic, end, {9, 598}).size() == 3);
  CHECK(backtest_origins(Clinic{}, end, {5, 200}).empty());
  CHECK_THROWS_AS((void)backtest_origins(clinic, end, {0, 200}), std::invalid_argument);
}

TEST_CASE("Too short a history is refused with one sentence") {
  Clinic clinic = small_clinic();
  CHECK(!run_backtest(clinic, plain_priors(), today, {}));
  clinic.units = {unit("A", "L", last_day - 250, last_day - 10)};
  const auto refused = run_backtest(clinic, plain_priors(), today, {});
  REQUIRE(!refused);
  CHECK(refused.error().sentence.find("300 days") != std::string::npos);
  CHECK(run_backtest(clinic, plain_priors(), today, {6, 30}));
}

TEST_CASE("Where the law is known the spans hold as many lives as they promise") {
  constexpr int clinics = 20;
  std::array<int, coverage_levels.size()> held{};
  for (unsigned clinic = 1; clinic <= clinics; ++clinic) {
    const auto made = run_backtest(simulated_clinic(120, kneeling, 101 * clinic),
                                   priors_that_know(kneeling), today, {});
    REQUIRE(made);
    CHECK(made->all.events > 300);
    for (std::size_t i = 0; i < coverage_levels.size(); ++i) {
      const Coverage& coverage = *made->all.coverage[i];
      held[i] += coverage.low <= coverage_levels[i] && coverage_levels[i] <= coverage.high;
      CHECK(coverage.high - coverage.low < 0.2);
    }
  }
  for (const int times : held) CHECK(times >= 17);
}

TEST_CASE("Where the law is learnt the spans hold about as many lives as they promise") {
  constexpr int clinics = 10;
  std::array<double, coverage_levels.size()> shares{};
  for (unsigned clinic = 1; clinic <= clinics; ++clinic) {
    const Backtest backtest = backtest_of(simulated_clinic(250, kneeling, 101 * clinic));
    REQUIRE(backtest.kinds.size() == 1);
    CHECK(backtest.kinds[0].kind == Kind::liner);
    check_same(backtest.kinds[0].scores, backtest.all);
    for (std::size_t i = 0; i < coverage_levels.size(); ++i) {
      shares[i] += backtest.all.coverage[i]->share / clinics;
    }
  }
  for (std::size_t i = 0; i < coverage_levels.size(); ++i) {
    CHECK(std::abs(shares[i] - coverage_levels[i]) < 0.02);
  }
}

TEST_CASE("Knowing how patients use their parts beats a law that does not and a fixed interval") {
  const BacktestScores scores = backtest_of(simulated_clinic(250, 0.3, 23)).all;
  CHECK(*skill(scores.crps->sparewell, scores.crps->clinic_weibull) > 0.03);
  CHECK(*skill(scores.crps->sparewell, scores.crps->calendar) > 0.2);
  for (const auto& pinball : scores.pinball) {
    CHECK(pinball->sparewell < pinball->clinic_weibull);
    CHECK(pinball->sparewell < pinball->calendar);
  }
}

TEST_CASE("Where use makes no difference the clinic-wide Weibull is as good") {
  const BacktestScores scores = backtest_of(simulated_clinic(250, 0, 29)).all;
  CHECK(std::abs(*skill(scores.crps->sparewell, scores.crps->clinic_weibull)) < 0.02);
}

TEST_CASE("Nothing that happens after the day of the forecast changes it") {
  const Clinic clinic = simulated_clinic(60, kneeling, 31);
  const BacktestPlan once{1, 180};
  const Backtest before = backtest_of(clinic, once);
  const Date origin = before.origins.front();

  Clinic later = clinic;
  for (int i = 0; i < 60; ++i) {
    Usage wild = usage(fmt::format("P{}", i), days_between(day_zero, origin) + 1);
    wild.kneeling_hours = 20;
    later.usage.push_back(wild);
    const int issued = days_between(day_zero, origin) + 1 + i;
    later.units.push_back(unit(fmt::format("P{}", i), "L", issued, issued + 1));
  }
  check_same(backtest_of(later, once).all, before.all);

  Usage on_the_day = usage("P0", days_between(day_zero, origin));
  on_the_day.kneeling_hours = 20;
  later.usage.push_back(on_the_day);
  CHECK(backtest_of(later, once).all.crps->sparewell != before.all.crps->sparewell);
}

TEST_CASE("What was known on a day is the same whether or not the rest is cut off") {
  const Clinic clinic = simulated_clinic(60, kneeling, 37);
  const Date origin = day_zero + days{700};
  const Clinic cut = known_at(clinic, origin);
  const Clinic known = known_at(clinic, day_zero + days{900});
  CHECK(known_at(known, origin).units == cut.units);
  CHECK(known_at(known, origin).usage == cut.usage);
  CHECK(cut.units.size() < clinic.units.size());
  for (const Unit& unit : cut.units) {
    CHECK(unit.issued_on <= origin);
    CHECK(unit.ended_on.value_or(origin) <= origin);
    CHECK(unit.end_reason.has_value() == unit.ended_on.has_value());
  }
}

TEST_CASE("What is dated after today changes nothing, and a second run gives the same") {
  Clinic clinic = simulated_clinic(60, kneeling, 41);
  const Backtest first = backtest_of(clinic);
  clinic.units.push_back(unit("P1", "L", last_day + 1));
  for (Unit& unit : clinic.units) {
    if (unit.ended_on || unit.issued_on > today) continue;
    unit.ended_on = today + days{3};
    unit.end_reason = EndReason::tear;
  }
  const Backtest second = backtest_of(clinic);
  CHECK(first.origins == second.origins);
  check_same(first.all, second.all);
}

TEST_CASE("Skill is the part of the other's score that is saved") {
  CHECK(*skill(6, 8) == doctest::Approx(0.25));
  CHECK(*skill(8, 8) == 0);
  CHECK(*skill(12, 8) == doctest::Approx(-0.5));
  CHECK(!skill(1, 0));
}

TEST_CASE("A backtest tells how far it is, and ends when it is told to") {
  const Clinic clinic = simulated_clinic(20, kneeling, 5);
  std::vector<int> told;
  const auto stop_at = [&](int last) {
    return [&told, last](int done, int of) {
      CHECK(of == 4);
      told.push_back(done);
      return done < last;
    };
  };
  const BacktestPlan plan{4, 180};
  CHECK(run_backtest(clinic, plain_priors(), today, plan, stop_at(4)));
  CHECK(told == std::vector<int>{0, 1, 2, 3});
  told.clear();
  const auto stopped = run_backtest(clinic, plain_priors(), today, plan, stop_at(1));
  REQUIRE_FALSE(stopped);
  CHECK(stopped.error().sentence.find("stopped") != std::string::npos);
  CHECK(told == std::vector<int>{0, 1});
}

}  // namespace backtest_test
