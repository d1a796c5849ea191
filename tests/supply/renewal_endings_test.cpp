// Renewal with losses, and with endings that end the line.
#include <cmath>
#include <numeric>
#include <random>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/other_endings_made.hpp"
#include "supply/renewal.hpp"
#include "wear/competing_endings.hpp"

namespace renewal_endings_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

struct Case {
  double age, shape, scale, rate;
  int days_ahead;
  double lost, resized;  ///< a day
};

wear::UnitLife life_of(const Case& c) {
  return wear::UnitLife{today, c.age, c.shape, c.scale, {{today, c.rate}}};
}

wear::OtherEndings others_of(const Case& c) {
  wear::OtherEndings others;
  if (c.lost > 0) others = rates(known, {{EndReason::lost, c.lost}});
  if (c.resized > 0) {
    others.rates[wear::position_of(EndReason::resized)] = {known, known / c.resized};
  }
  return others;
}

/// P(N >= 1), P(N >= 2), ... by the recursion on a grid of days that is as fine as is bearable.
std::vector<double> by_fine_recursion(const Case& c, int most) {
  const int cells = 3000;
  const double step = static_cast<double>(c.days_ahead) / cells;
  const auto hazard = [&](double wear) { return std::pow(wear / c.scale, c.shape); };
  const auto ended = [&](double t, double age) {
    return -std::expm1(hazard(age) - hazard(age + c.rate * t) - c.lost * t);
  };
  std::vector<double> tail;
  std::vector<double> middle;
  for (int i = 0; i <= cells; ++i) tail.push_back(ended(i * step, c.age));
  for (int i = 0; i < cells; ++i) middle.push_back(ended((i + 0.5) * step, 0));
  std::vector<double> tails;
  for (int n = 1; n <= most; ++n) {
    double kept = 0;
    std::vector<double> next(tail.size(), 0.0);
    for (std::size_t j = 1; j < tail.size(); ++j) {
      const double in_cell = tail[j] - tail[j - 1];
      kept += in_cell * std::exp(-c.resized * (static_cast<double>(j) - 0.5) * step);
      for (std::size_t i = j; i < tail.size(); ++i) next[i] += in_cell * middle[i - j];
    }
    tails.push_back(kept);
    tail = std::move(next);
  }
  return tails;
}

double at_least(const Pmf& pmf, int n) {
  return pmf.more_than(n - 1);
}

}  // namespace

TEST_CASE("Losses and endings of the line agree with the recursion on a fine grid") {
  FreshCountsCache fresh;
  for (const Case& c :
       {Case{0, 2.0, 250, 1, 28, 0.0001, 0.0004},     // a usual interval
        Case{150, 1.0, 200, 0.5, 45, 0.0003, 0.001},  // no memory
        Case{150, 1.5, 120, 1, 60, 0.0002, 0.0005},   //
        Case{60, 2.5, 90, 1, 365, 0.0003, 0.0008},    // a year
        Case{0, 4.0, 90, 1, 365, 0.001, 0.003},       // often
        Case{30, 3.0, 60, 1, 700, 0.0005, 0.0005},    // many
        Case{10, 2.0, 300, 0.05, 400, 0.002, 0.001},  // seldom worn: lost rather than worn out
        Case{0, 2.0, 300, 0, 400, 0.002, 0.001},      // in a drawer
        Case{80, 2.0, 200, 1, 300, 0, 0.002},         // never lost
        Case{80, 2.0, 200, 1, 300, 0.002, 0}}) {      // never left
    CAPTURE(c.age);
    CAPTURE(c.shape);
    CAPTURE(c.days_ahead);
    const Pmf made = replacements(life_of(c), today + days{c.days_ahead}, fresh, others_of(c));
    const auto wanted = by_fine_recursion(c, 8);
    for (int n = 1; n <= 8; ++n) {
      CAPTURE(n);
      CHECK(std::abs(at_least(made, n) - wanted[static_cast<std::size_t>(n) - 1]) < 4e-5);
    }
  }
}

TEST_CASE("Losses alone, in a drawer, are Poisson until the line ends") {
  FreshCountsCache fresh;
  const wear::UnitLife drawer{today, 100, 2, 200, {{today, 0.0}}};
  const Date end = today + days{500};
  const Pmf made = replacements(drawer, end, fresh, rates(known, {{EndReason::recall, 0.002}}));
  for (int n = 0; n < 6; ++n) {
    CHECK(std::abs(made.mass()[static_cast<std::size_t>(n)] - poisson(n, 1)) < 2e-5);
  }
}

TEST_CASE("Counts agree with lives played out, the rate of leaving mixed over what is not known") {
  FreshCountsCache fresh;
  const double age = 100;
  const double shape = 2.2;
  const double scale = 150;
  const int ahead = 250;
  wear::OtherEndings others = rates(known, {{EndReason::lost, 0.001}});
  const wear::EndingRate leaving{2, 900};
  others.rates[wear::position_of(EndReason::upgrade)] = leaving;
  const wear::UnitLife life{today, age, shape, scale, {{today, 1.0}}};
  const Pmf made = replacements(life, today + days{ahead}, fresh, others);

  std::mt19937_64 random{20261125};
  std::exponential_distribution<double> exponential{1};
  std::gamma_distribution<double> belief{leaving.endings, 1 / leaving.days};
  const int runs = 400000;
  std::vector<double> played(12, 0.0);
  const auto next = [&](double from) {
    const double hazard = std::pow(from / scale, shape) + exponential(random);
    return std::min(scale * std::pow(hazard, 1 / shape) - from, exponential(random) / 0.001);
  };
  for (int run = 0; run < runs; ++run) {
    const double end = std::min<double>(ahead, exponential(random) / belief(random));
    std::size_t count = 0;
    for (double at = next(age); at <= end; at += next(0)) ++count;
    played[std::min<std::size_t>(count, 11)] += 1.0 / runs;
  }
  for (std::size_t n = 0; n < 8; ++n) {
    const double mass = n < made.mass().size() ? made.mass()[n] : 0;
    CHECK(std::abs(mass - played[n]) < 4 * std::sqrt(0.25 / runs));
  }
}

TEST_CASE("The first replacement is what the competing endings say") {
  FreshCountsCache fresh;
  const auto others = rates(3, {{EndReason::lost, 0.0003},
                                {EndReason::recall, 0.0001},
                                {EndReason::resized, 0.001},
                                {EndReason::deceased, 0.0002}});
  const std::vector<wear::RateSpan> changing{{today, 0.4}, {today + days{40}, 1.5}};
  for (const int ahead : {1, 20, 90, 400}) {
    const wear::UnitLife life{today, 70, 2.3, 200, changing, wear::Multiplier::after(0.3, 2, 1.1)};
    const Date end = today + days{ahead};
    const auto chances = wear::ending_chances(life, others, ahead);
    const double wanted =
        chances.worn + chances.of(EndReason::lost) + chances.of(EndReason::recall);
    const Pmf made = replacements(life, end, fresh, others);
    CHECK(std::abs(made.more_than(0) - wanted) < 1e-4);
    CHECK(at_most_replaced(life, end, others) >= wanted);
    CHECK(at_most_replaced(life, end, others) < wanted + 0.0012 * ahead);
    CHECK(std::abs(chance_of_replacement(life, end, others) - wanted) < 1e-4);
    CHECK(std::abs(std::accumulate(made.mass().begin(), made.mass().end(), 0.0) - 1) < 1e-12);
  }
}

TEST_CASE("What is expected for losses is the mean without wear") {
  FreshCountsCache fresh;
  const auto others = rates(known, {{EndReason::lost, 0.001}, {EndReason::resized, 0.002}});
  const Date end = today + days{200};
  const wear::UnitLife drawer{today, 100, 2, 200, {{today, 0.0}}};
  const double wanted = 0.001 * -std::expm1(-0.4) / 0.002;  // rate times the mean time in the line
  CHECK(expected_losses(others, 200) == doctest::Approx(wanted).epsilon(1e-4));
  CHECK(replacements(drawer, end, fresh, others).mean() == doctest::Approx(wanted).epsilon(1e-4));
  CHECK(expected_losses(others, 0) == 0);
}

TEST_CASE("Fresh counts between the loss rates that are made are as exact as those that are") {
  for (const double shape : {1.0, 2.0, 4.0}) {
    FreshCountsCache cache;
    for (const double rate : {0.004, 0.033, 0.21, 0.7}) {
      const double horizon = 2;
      const FreshTails tails = cache.covering(shape, horizon, rate);
      const FreshCounts exact{shape, horizon, rate};
      for (const double t : {0.3, 1.1, 1.9}) {
        std::vector<double> made(static_cast<std::size_t>(tails.most()), 0.0);
        tails.add_tails(t, 1, made);
        for (int n = 1; n <= 6; ++n) {
          CHECK(std::abs(made[static_cast<std::size_t>(n) - 1] - exact.at_least(n, t)) < 1e-5);
        }
      }
    }
  }
}

}  // namespace renewal_endings_test
