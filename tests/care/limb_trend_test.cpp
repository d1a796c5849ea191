#include "care/limb_trend.hpp"

#include <cmath>
#include <random>

#include "care/clinic_made.hpp"

namespace limb_trend_test {

using namespace sparewell;
using namespace sparewell::care;
using namespace sparewell::care::testing;
using doctest::Approx;

namespace {

Prosthesis made_prosthesis(Stage stage, int days_ago) {
  Prosthesis made;
  made.patient = ana;
  made.stage = stage;
  made.delivered_on = today - days{days_ago};
  return made;
}

Item sized(double least, double most) {
  auto item = made_item("LINER", Kind::liner);
  item.size_min_cm = least;
  item.size_max_cm = most;
  item.size_at_cm = 4;
  return item;
}

LimbReading reading(int days_ago, double cm) {
  return {today - days{days_ago}, cm, false};
}

std::optional<LimbTrend> trend_of(const std::vector<Prosthesis>& prostheses,
                                  const std::vector<LimbReading>& readings) {
  return limb_trend(prostheses, ana, Side::left, readings, today);
}

/// How often the central interval with chance 0.8 holds the true circumference so many days ahead.
struct Law {
  bool preparatory = false;
  double slope = 0;     ///< of the log circumference
  double slope_sd = 0;  ///< between limbs
  double own = 0.01;    ///< scatter of the limb itself, relative
  double tape = tape_error;
  int readings = 6;
  int apart = 150;   ///< days
  double wrong = 0;  ///< chance that a reading is 10 % off
  /// Points that tell the scatter of a limb, which differs from limb to limb: scatter^2 is
  /// points / chi-square(points) times that of the law. 0: alike.
  int scatter_points = 0;
};

/// The limb's own scatter and the tape's, of one limb.
std::pair<double, double> scatter_of(const Law& law, std::mt19937_64& random) {
  if (law.scatter_points == 0) return {law.own, law.tape};
  std::chi_squared_distribution<double> chi_squared{static_cast<double>(law.scatter_points)};
  const double all =
      std::hypot(law.own, law.tape) * std::sqrt(law.scatter_points / chi_squared(random));
  const double tape = std::min(all, law.tape);
  return {std::sqrt(all * all - tape * tape), tape};
}

double share_held(const Law& law, int ahead, int limbs) {
  std::mt19937_64 random{20261125};
  std::normal_distribution<double> normal;
  std::uniform_real_distribution<double> uniform;
  int held = 0;
  for (int limb = 0; limb < limbs; ++limb) {
    const int first = law.apart * (law.readings - 1);
    const auto prosthesis =
        made_prosthesis(law.preparatory ? Stage::preparatory : Stage::definitive, first);
    const double slope = law.slope + law.slope_sd * normal(random);
    const double start = std::log(28);
    const auto [own, tape] = scatter_of(law, random);
    const auto level = [&, own = own](int since) {
      const double x = law.preparatory ? std::log(1 + since / 7.0) : since / 365.25;
      return start + slope * x + own * normal(random);
    };
    std::vector<LimbReading> readings;
    for (int i = 0; i < law.readings; ++i) {
      const double slip = uniform(random) < law.wrong ? 0.1 : 0;
      const double cm = std::exp(level(i * law.apart) + tape * normal(random) + slip);
      readings.push_back(reading(first - i * law.apart, std::round(cm * 10) / 10));
    }
    const auto span = trend_of({prosthesis}, readings)->on(today + days{ahead});
    const double truth = std::exp(level(first + ahead));
    held += truth >= span.low_cm && truth <= span.high_cm ? 1 : 0;
  }
  return static_cast<double>(held) / limbs;
}

/// Four standard errors of a share of 0.8.
double four_errors(int limbs) {
  return 4 * std::sqrt(0.8 * 0.2 / limbs);
}

}  // namespace

TEST_CASE("The 80 % interval holds as often as it says, for limbs by the priors' own law") {
  constexpr int limbs = 4000;
  // Simulated here. The tolerance is four binomial standard errors, 2.5 points, and one point for
  // what is not exact: Student's t with degrees of freedom by Satterthwaite's rule.
  const double tolerance = four_errors(limbs) + 0.01;
  for (const int readings : {1, 2, 4, 8}) {
    CAPTURE(readings);
    const Law known{false, 0, 0.02, 0.01, tape_error, readings, 150, 0, 4};
    const Law fresh{true, -0.0485, 0.03, 0.01, tape_error, readings, 28, 0, 4};
    for (const double share : {share_held(known, 180, limbs), share_held(fresh, 60, limbs)}) {
      CHECK(share > 0.8 - tolerance);
      CHECK(share < 0.8 + tolerance);
    }
  }
}

TEST_CASE("The interval is not too narrow when some readings are wrong or the limb is steady") {
  constexpr int limbs = 2000;
  CHECK(share_held({false, 0, 0.02, 0.01, tape_error, 8, 150, 0.1}, 180, limbs) >
        0.8 - four_errors(limbs) - 0.02);
  CHECK(share_held({false, -0.005, 0.01, 0, 0.006, 8, 150, 0}, 180, limbs) >
        0.8 - four_errors(limbs));
}

TEST_CASE("The published fall of a preparatory limb's volume is the prior's middle") {
  const auto trend = trend_of({made_prosthesis(Stage::preparatory, 0)}, {reading(0, 30)});
  REQUIRE(trend);
  CHECK(trend->preparatory());
  // 9.7 % of volume per ln(week) at first, JRRD 2014;51(7):1119-1126: half of it in circumference.
  CHECK(trend->line().slope == Approx(-0.0485));
  // Week 2 has 6.7 % less volume than week 1 (computed from the same figure), so the circumference
  // is the square root of 0.933 of it; the straight line in the log differs by less than 0.2 %.
  CHECK(trend->on(today + days{7}).circumference_cm ==
        Approx(30 * std::sqrt(0.933)).epsilon(0.002));
}

TEST_CASE("A preparatory limb shrinks fast at first, a definitive one by the year") {
  const std::vector<LimbReading> readings{reading(84, 30), reading(56, 28.6), reading(28, 28),
                                          reading(0, 27.6)};
  const auto fresh = trend_of({made_prosthesis(Stage::preparatory, 84)}, readings);
  const auto known = trend_of({made_prosthesis(Stage::definitive, 84)}, readings);
  REQUIRE((fresh && known));
  CHECK_FALSE(known->preparatory());
  const auto falls = [](const LimbTrend& trend, int from, int to) {
    return std::log(trend.on(today + days{from}).circumference_cm /
                    trend.on(today + days{to}).circumference_cm);
  };
  // By hand: ln(weeks) grows by ln(13 / 9) = 0.368 in the last four weeks, by ln(17 / 13) = 0.268
  // in the next four, and years by as much in each.
  CHECK(falls(*fresh, 0, 28) / falls(*fresh, -28, 0) == Approx(0.268264 / 0.367725).epsilon(1e-4));
  CHECK(falls(*known, 0, 28) / falls(*known, -28, 0) == Approx(1));
  CHECK(fresh->change() < -0.02);
}

TEST_CASE("Readings under the preparatory prosthesis do not tell the trend of the definitive one") {
  auto before = made_prosthesis(Stage::preparatory, 500);
  before.ended_on = today - days{300};
  const std::vector<LimbReading> readings{reading(480, 33), reading(400, 30), reading(310, 28),
                                          reading(150, 28), reading(0, 28)};
  const auto trend = trend_of({before, made_prosthesis(Stage::definitive, 300)}, readings);
  REQUIRE(trend);
  CHECK(trend->readings().size() == 3);
  CHECK(std::abs(trend->change()) < 0.006);
  // A definitive prosthesis that has no reading of its own starts from the last one.
  const auto none = trend_of({before, made_prosthesis(Stage::definitive, 0)},
                             {reading(480, 33), reading(60, 28)});
  REQUIRE(none);
  CHECK(none->readings().size() == 1);
}

TEST_CASE("Chances outside follow the range, and unknown sizes and limbs have none") {
  const auto trend = trend_of({}, {reading(300, 28), reading(150, 28), reading(0, 28)});
  REQUIRE(trend);
  CHECK(trend->chance_below(28, today) + trend->chance_above(28, today) == Approx(1));
  CHECK(trend->chance_outside(sized(20, 40), today) < 0.001);
  CHECK(trend->chance_outside(sized(30, 32), today) > 0.9);
  CHECK(trend->chance_outside(made_item("PIN", Kind::pin), today) == 0);
  CHECK_FALSE(trend_of({}, {}));
}

TEST_CASE("A limb read at the very end of a range is as likely inside, and not leaving") {
  const auto trend = trend_of({}, {reading(10, 23)});
  REQUIRE(trend);
  CHECK_FALSE(trend->leaves(sized(16, 23), today));
  CHECK_FALSE(likelier_than_not(trend->chance_outside(sized(16, 23), today)));
  CHECK_FALSE(trend->leaves(sized(23, 30), today));
  CHECK(trend->leaves(sized(23.1, 30), today));
}

TEST_CASE("The day on which the limb is likely outside is where the chance passes one half") {
  std::vector<LimbReading> readings;
  for (int i = 16; i >= 0; --i) readings.push_back(reading(91 * i, 27.6 * std::exp(0.011 * i)));
  const auto trend = trend_of({}, readings);
  REQUIRE(trend);
  const auto item = sized(27, 35);
  const auto first = trend->likely_outside(item, today);
  REQUIRE(first);
  CHECK(trend->chance_outside(item, *first) > 0.5);
  CHECK(trend->chance_outside(item, *first - days{1}) <= 0.5);
  const auto leaves = trend->leaves(item, today);
  REQUIRE(leaves);
  CHECK(*leaves >= *first);
  // By hand: ln(27.6 / 27) = 0.022 is what goes in twice 91 days; the prior still slows so many
  // readings a little.
  CHECK(days_between(today, *leaves) == Approx(180).epsilon(0.15));
  CHECK(trend->chance_below(27, *leaves) > 0.5);
  CHECK_FALSE(trend->leaves(sized(20, 40), today));
  CHECK(trend->leaves(sized(28, 30), today) == today + days{1});
}

}  // namespace limb_trend_test
