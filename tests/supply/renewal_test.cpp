#include "supply/renewal.hpp"

#include <cmath>
#include <numeric>
#include <random>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "wear/multiplier_points.hpp"

namespace renewal_test {

using namespace sparewell;
using namespace sparewell::supply;
using testing::poisson;
using testing::today;

namespace {

wear::UnitLife worn_daily(double age, double shape, double scale) {
  return wear::UnitLife{today, age, shape, scale, {{today, 1.0}}};
}

/// Chances of 0, 1, 2, ... replacements by playing out many lives.
std::vector<double> simulated(double age, double shape, double scale, double horizon, int runs) {
  std::mt19937_64 random{20261125};
  std::uniform_real_distribution<double> uniform{0, 1};
  std::vector<double> share(12, 0.0);
  const auto life = [&](double from) {
    const double hazard = std::pow(from / scale, shape) - std::log1p(-uniform(random));
    return scale * std::pow(hazard, 1 / shape) - from;
  };
  for (int run = 0; run < runs; ++run) {
    std::size_t count = 0;
    for (double at = life(age); at <= horizon; at += life(0)) ++count;
    share[std::min<std::size_t>(count, 11)] += 1.0 / runs;
  }
  return share;
}

}  // namespace

TEST_CASE("The renewal function agrees with the published Weibull table") {
  // "A First Course in Stochastic Models" (2003), Table 8.1.1, p. 312: mean life 1, squared
  // coefficient of variation 0.25. At t = 0.8 the printed last digit differs from a finer
  // computation (0.414049), so the tolerance is 1e-4 where four decimals are printed, and half of
  // the last digit plus that elsewhere.
  struct Row {
    double t;
    double printed;
    double tolerance;
  };
  const double shape = 2.1013490947;
  const double scale = 1.1290633895;
  const FreshCounts even{shape, 4};
  for (const Row row : {Row{0.1, 0.0061, 1e-4}, Row{0.2, 0.0261, 1e-4}, Row{0.4, 0.1087, 1e-4},
                        Row{0.6, 0.2422, 1e-4}, Row{0.8, 0.4141, 1e-4}, Row{1.0, 0.6091, 1e-4},
                        Row{1.2, 0.8143, 1e-4}, Row{1.5, 1.124, 6e-4}, Row{2.0, 1.627, 6e-4},
                        Row{2.5, 2.125, 6e-4}}) {
    CHECK(std::abs(even.mean(row.t / scale) - row.printed) <= row.tolerance);
  }
  // The same table, squared coefficient of variation 2: shape below 1.
  const FreshCounts uneven{0.7209047424, 16};
  for (const Row row :
       {Row{0.2, 0.3841, 2e-4}, Row{0.5, 0.7785, 2e-4}, Row{1.0, 1.357, 7e-4},
        Row{1.5, 1.901, 7e-4}, Row{2.0, 2.428, 7e-4}, Row{2.5, 2.947, 7e-4}, Row{3.0, 3.460, 7e-4},
        Row{3.5, 3.969, 7e-4}, Row{5.0, 5.485, 7e-4}, Row{7.5, 7.995, 7e-4}}) {
    CHECK(std::abs(uneven.mean(row.t / 0.8117933511) - row.printed) <= row.tolerance);
  }
}

TEST_CASE("Means agree with a second computation by step halving") {
  // Unit scale; computed by an independent script, agreement of halved steps about 1e-6.
  struct Column {
    double shape;
    double quarter, one, two, four;
  };
  for (const Column c : {Column{1.5, 0.121902, 0.841578, 1.945501, 4.161429},
                         Column{2, 0.061225, 0.753691, 1.894039, 4.150135},
                         Column{3, 0.015516, 0.672329, 1.801075, 4.045339},
                         Column{4, 0.003899, 0.644599, 1.746606, 3.952260}}) {
    const FreshCounts fresh{c.shape, 4};
    CHECK(std::abs(fresh.mean(0.25) - c.quarter) < 2e-5);
    CHECK(std::abs(fresh.mean(1) - c.one) < 2e-5);
    CHECK(std::abs(fresh.mean(2) - c.two) < 2e-5);
    CHECK(std::abs(fresh.mean(4) - c.four) < 4e-5);
  }
}

TEST_CASE("Exponential lives give the Poisson distribution, whatever the age") {
  // Shape 1: the memoryless case (standard).
  FreshCountsCache fresh;
  for (const double mean : {0.01, 0.3, 1.0, 4.0}) {
    const Pmf made = replacements(worn_daily(77, 1.0, 200 / mean), today + days{200}, fresh);
    for (int n = 0; n < 10; ++n) {
      const auto at = static_cast<std::size_t>(n);
      const double mass = at < made.mass().size() ? made.mass()[at] : 0;
      CHECK(std::abs(mass - poisson(n, mean)) < 2e-5);
    }
  }
}

TEST_CASE("Counts agree with lives played out, for worn and new units") {
  FreshCountsCache fresh;
  const int runs = 400000;
  struct Case {
    double age, shape, scale;
    int days_ahead;
  };
  for (const Case c : {Case{0, 2.0, 60, 90}, Case{150, 1.6, 200, 40}, Case{45, 3.0, 60, 200},
                       Case{10, 0.8, 100, 150}}) {
    const Pmf made =
        replacements(worn_daily(c.age, c.shape, c.scale), today + days{c.days_ahead}, fresh);
    const auto played = simulated(c.age, c.shape, c.scale, c.days_ahead, runs);
    for (std::size_t n = 0; n < 8; ++n) {
      const double mass = n < made.mass().size() ? made.mass()[n] : 0;
      // Four standard errors of the share.
      CHECK(std::abs(mass - played[n]) < 4 * std::sqrt(0.25 / runs));
    }
  }
}

TEST_CASE("Chances sum to 1 and halving the grid changes them by less than the stated tolerance") {
  for (const double shape : {1.0, 1.3, 2.0, 3.5}) {
    // The cache takes the next power of two: 1.9 is read off a grid to 2, 2.1 off one to 4.
    const FreshCounts coarse{shape, 16};
    const FreshCounts fine{shape, 1};
    for (int n = 1; n < 4; ++n) {
      for (const double t : {0.1, 0.35, 0.9}) {
        CHECK(std::abs(coarse.at_least(n, t) - fine.at_least(n, t)) < 2e-5);
      }
    }
  }
  FreshCountsCache fresh;
  const Pmf made = replacements(worn_daily(30, 1.7, 90), today + days{300}, fresh);
  CHECK(std::abs(std::accumulate(made.mass().begin(), made.mass().end(), 0.0) - 1) < 1e-12);
}

TEST_CASE("A unit that is not worn needs no replacement") {
  FreshCountsCache fresh;
  const wear::UnitLife drawer{today, 100, 2, 200, {{today, 0.0}}};
  CHECK(replacements(drawer, today + days{1000}, fresh).mean() == 0);
  CHECK(replacements(worn_daily(1, 2, 200), today, fresh).mean() == 0);
}

TEST_CASE("A change of wear rate in the interval counts as wear") {
  FreshCountsCache fresh;
  const wear::UnitLife changing{today, 50, 2, 100, {{today, 0.5}, {today + days{20}, 2.0}}};
  // 20 days at 0.5 and 10 at 2 wear like 30 days at 1.
  const Pmf made = replacements(changing, today + days{30}, fresh);
  const Pmf same = replacements(worn_daily(50, 2, 100), today + days{30}, fresh);
  REQUIRE(made.mass().size() == same.mass().size());
  CHECK(made.mass()[1] == doctest::Approx(same.mass()[1]));
}

TEST_CASE("The person's multiplier moves the replacements with it, the masses still sum to 1") {
  FreshCountsCache fresh;
  const Date end = today + days{400};
  double before = 0;
  for (const double endings : {0.0, 2.0, 5.0, 12.0}) {
    const auto person = wear::Multiplier::after(0.5, endings, 3.0);
    const wear::UnitLife life{today, 60, 2, 150, {{today, 1.0}}, person};
    const Pmf made = replacements(life, end, fresh);
    CHECK(std::abs(std::accumulate(made.mass().begin(), made.mass().end(), 0.0) - 1) < 1e-12);
    CHECK(1 - made.mass()[0] == doctest::Approx(life.chance_worn_by(end)));
    CHECK(made.mean() > before);
    before = made.mean();
  }
}

TEST_CASE("A multiplier known exactly is a change of scale") {
  FreshCountsCache fresh;
  const wear::UnitLife doubled{today, 60, 2, 150, {{today, 1.0}}, wear::Multiplier{2e14, 1e14}};
  const Pmf made = replacements(doubled, today + days{400}, fresh);
  const Pmf same = replacements(worn_daily(60, 2, 150 / std::sqrt(2.0)), today + days{400}, fresh);
  REQUIRE(made.mass().size() == same.mass().size());
  for (std::size_t n = 0; n < same.mass().size(); ++n) {
    CHECK(made.mass()[n] == doctest::Approx(same.mass()[n]));
  }
}

TEST_CASE("What follows the first replacement is mixed over the person's multiplier") {
  // Independent: each value of the multiplier is a change of scale, the counts are weighted by 24
  // Gauss points of its law.
  FreshCountsCache fresh;
  struct Case {
    double age, shape, scale, theta_shape;
    int days_ahead;
    double tolerance;
  };
  for (const Case& c : {Case{150, 2.2, 250, 3, 28, 1e-6}, Case{30, 2.5, 250, 2, 90, 1e-5},
                        Case{60, 1.5, 60, 3, 45, 5e-5}, Case{60, 2.0, 150, 3, 400, 1e-4},
                        Case{0, 3.0, 90, 2, 200, 3e-4}}) {
    const wear::Multiplier person{c.theta_shape, c.theta_shape};
    const wear::UnitLife life{today, c.age, c.shape, c.scale, {{today, 1.0}}, person};
    const Pmf made = replacements(life, today + days{c.days_ahead}, fresh);
    std::vector<double> weights;
    std::vector<Pmf> parts;
    for (const auto& [value, weight] : wear::multiplier_points(person)) {
      weights.push_back(weight);
      const double scale = c.scale * std::pow(value, -1 / c.shape);
      parts.push_back(
          replacements(worn_daily(c.age, c.shape, scale), today + days{c.days_ahead}, fresh));
    }
    const Pmf wanted = mix(weights, parts);
    for (int n = 0; n < 8; ++n) {
      CHECK(std::abs(made.more_than(n) - wanted.more_than(n)) < c.tolerance);
    }
    CHECK(std::abs(std::accumulate(made.mass().begin(), made.mass().end(), 0.0) - 1) < 1e-12);
  }
}

}  // namespace renewal_test
