#include "wear/scores.hpp"

#include <cmath>
#include <functional>
#include <random>

#include <doctest/doctest.h>

namespace scores_test {

using namespace sparewell::wear;

namespace {

const StepCurve always_observed;

using Law = std::function<double(double)>;  // chance to be worn out by a day

Law weibull(double shape, double scale) {
  return [=](double day) { return -std::expm1(-std::pow(day / scale, shape)); };
}

std::vector<double> chances(const Law& law, int horizon) {
  std::vector<double> made;
  for (int day = 0; day <= horizon; ++day) made.push_back(law(day));
  return made;
}

constexpr double staying = 0.99;  // chance to stay under observation for one more day
constexpr int last_day = 600;     // by which all is over

StepCurve true_observation() {
  std::vector<StepCurve::Step> steps;
  for (int day = 1; day <= last_day; ++day) {
    steps.push_back({static_cast<double>(day), std::pow(staying, day)});
  }
  return StepCurve{steps};
}

/// Exact mean of a score over lives by `truth` that end on whole days.
double expected_score(const Law& truth, const std::function<double(const Outcome&)>& score) {
  double sum = 0;
  for (int day = 1; day <= last_day; ++day) {
    sum += (truth(day) - truth(day - 1)) * score({static_cast<double>(day), true});
  }
  return sum;
}

/// The same when lives also end for other reasons, with a constant chance a day.
double expected_score_of_seen(const Law& truth,
                              const std::function<double(const Outcome&)>& score) {
  double sum = 0;
  for (int day = 1; day <= last_day; ++day) {
    const double observed_to = std::pow(staying, day - 1);
    sum += (truth(day) - truth(day - 1)) * observed_to * score({static_cast<double>(day), true});
    sum +=
        (1 - truth(day)) * observed_to * (1 - staying) * score({static_cast<double>(day), false});
  }
  return sum;
}

}  // namespace

TEST_CASE("Pinball loss costs the level above the quantile and the rest below") {
  CHECK(pinball_loss(0.9, 10, 12) == doctest::Approx(1.8));
  CHECK(pinball_loss(0.9, 10, 7) == doctest::Approx(0.3));
  CHECK(pinball_loss(0.5, 10, 7) == doctest::Approx(1.5));
  CHECK(pinball_loss(0.1, 10, 10) == 0);
}

TEST_CASE("A survival curve falls by the part of those at risk that wore out") {
  // By hand: 5 at risk at 3, 4 at 5, 1 at 10.
  const std::vector<Outcome> lives{{8, false}, {3, true}, {5, false}, {10, true}, {5, true}};
  const StepCurve curve = survival_curve(lives);
  CHECK(curve.before(3) == 1);
  CHECK(curve.before(3.5) == doctest::Approx(0.8));
  CHECK(curve.before(5) == doctest::Approx(0.8));
  CHECK(curve.before(6) == doctest::Approx(0.6));
  CHECK(curve.before(11) == 0);
  CHECK(curve.falls_to(0.7) == 5);
  CHECK(curve.falls_to(0.5) == 10);
  const std::vector<Outcome> none_worn{{8, false}, {9, false}};
  CHECK(!survival_curve(none_worn).falls_to(0.5));
}

TEST_CASE("A wear ending comes before other endings of its day on the observation curve") {
  const std::vector<Outcome> lives{{8, false}, {3, true}, {5, false}, {10, true}, {5, true}};
  const StepCurve curve = observation_curve(lives);
  CHECK(curve.before(5) == 1);
  CHECK(curve.before(6) == doctest::Approx(2.0 / 3));
  CHECK(curve.before(9) == doctest::Approx(1.0 / 3));
}

TEST_CASE("The weights of the lives whose outcome is known make up for the others exactly") {
  std::minstd_rand0 random{7};
  std::vector<Outcome> lives;
  for (int i = 0; i < 500; ++i) {
    lives.push_back({static_cast<double>(1 + random() % 300), random() % 3 != 0});
  }
  const StepCurve observed = observation_curve(lives);
  for (const double horizon : {50.0, 120.0, 250.0}) {
    double weights = 0;
    for (const Outcome& life : lives) {
      if (!life.worn_out && life.days < horizon) continue;
      weights += 1 / observed.before(std::min(life.days, horizon));
    }
    CHECK(weights == doctest::Approx(500).epsilon(1e-9));
  }
}

TEST_CASE("CRPS adds the squared distance to what happened, day by day") {
  const std::vector<double> forecast{0, 0.2, 0.5, 0.5};
  CHECK(crps_days(forecast, {2, true}, always_observed) == doctest::Approx(0.04 + 0.25));
  CHECK(crps_days(forecast, {1, true}, always_observed) == doctest::Approx(0.64 + 0.25));
  CHECK(crps_days(forecast, {5, true}, always_observed) == doctest::Approx(0.04 + 0.25));
  CHECK(crps_days(forecast, {2, false}, always_observed) == doctest::Approx(0.04));
  const StepCurve half_leave_at_2{{{2, 0.5}}};
  CHECK(crps_days(forecast, {3, false}, half_leave_at_2) == doctest::Approx(0.04 + 0.25 / 0.5));
  CHECK(crps_days(forecast, {1, true}, half_leave_at_2) == doctest::Approx(0.64 + 0.25));
}

TEST_CASE("CRPS of an exponential forecast equals its closed form") {
  // Own derivation: the integral of (1 - exp(-t/m))^2 to y and of exp(-2t/m) beyond is
  // y - 2 m (1 - exp(-y/m)) + m/2.
  const double mean = 5000;
  const auto forecast = chances(weibull(1, mean), 100000);
  for (const double y : {1.0, 700.0, 3000.0, 12000.0}) {
    const double closed = y + 2 * mean * std::expm1(-y / mean) + mean / 2;
    CHECK(std::abs(crps_days(forecast, {y, true}, always_observed) - closed) < 0.51);
  }
}

TEST_CASE("CRPS of a point forecast is the distance to the outcome") {
  std::vector<double> due_on_40(101, 0);
  for (std::size_t day = 40; day <= 100; ++day) due_on_40[day] = 1;
  CHECK(crps_days(due_on_40, {25, true}, always_observed) == 15);
  CHECK(crps_days(due_on_40, {70, true}, always_observed) == 30);
  CHECK(crps_days(due_on_40, {900, false}, always_observed) == 60);
}

TEST_CASE("A quantile is the first day that reaches its chance, or the horizon") {
  const std::vector<double> forecast{0, 0.2, 0.5, 0.5};
  CHECK(quantile_within(forecast, 0.1) == 1);
  CHECK(quantile_within(forecast, 0.5) == 2);
  CHECK(quantile_within(forecast, 0.9) == 3);
  CHECK(pinball_days(0.5, forecast, {1, true}, always_observed) == doctest::Approx(0.5));
  CHECK(pinball_days(0.9, forecast, {80, true}, always_observed) == 0);
  CHECK(pinball_days(0.5, forecast, {80, false}, always_observed) == doctest::Approx(0.5));
  CHECK(pinball_days(0.5, forecast, {2, false}, always_observed) == 0);
}

TEST_CASE("The true law scores best, and other endings do not change the mean score") {
  const Law truth = weibull(2, 60);
  const int horizon = 90;
  const StepCurve observed = true_observation();
  const auto right = chances(truth, horizon);
  for (const auto& [shape, scale] :
       {std::pair{2.0, 50.0}, {2.0, 72.0}, {1.5, 60.0}, {3.0, 60.0}, {1.0, 80.0}}) {
    const auto wrong = chances(weibull(shape, scale), horizon);
    const auto mean_crps = [&](const std::vector<double>& forecast) {
      return expected_score_of_seen(
          truth, [&](const Outcome& o) { return crps_days(forecast, o, observed); });
    };
    CHECK(mean_crps(right) < mean_crps(wrong));
    CHECK(mean_crps(wrong) == doctest::Approx(expected_score(truth, [&](const Outcome& o) {
                                return crps_days(wrong, o, always_observed);
                              })).epsilon(1e-6));
    for (const double p : {0.1, 0.5, 0.9}) {
      const auto mean_pinball = [&](const std::vector<double>& forecast) {
        return expected_score_of_seen(
            truth, [&](const Outcome& o) { return pinball_days(p, forecast, o, observed); });
      };
      CHECK(mean_pinball(right) <= mean_pinball(wrong));
      CHECK(mean_pinball(wrong) == doctest::Approx(expected_score(truth, [&](const Outcome& o) {
                                     return pinball_days(p, wrong, o, always_observed);
                                   })).epsilon(1e-6));
    }
  }
}

TEST_CASE("In simulated lives the mean CRPS of the true law is the integral of F (1 - F)") {
  // Own derivation: the mean of (F - 1{T <= t})^2 is F (1 - F) when F is the law of T.
  const Law truth = weibull(2, 60);
  const auto forecast = chances(truth, 90);
  double closed = 0;
  for (int day = 0; day < 90; ++day) closed += truth(day) * (1 - truth(day));
  std::minstd_rand0 random{11};
  double sum = 0;
  const int lives = 20000;
  for (int i = 0; i < lives; ++i) {
    const double u = static_cast<double>(random()) / 2147483647.0;
    const double life = std::ceil(60 * std::sqrt(-std::log(u)));
    sum += crps_days(forecast, {life, true}, always_observed);
  }
  CHECK(sum / lives == doctest::Approx(closed).epsilon(0.02));
}

}  // namespace scores_test
