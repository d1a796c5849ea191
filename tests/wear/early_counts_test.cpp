#include "wear/early_counts.hpp"

#include <cmath>
#include <random>

#include <boost/math/quadrature/tanh_sinh.hpp>
#include <doctest/doctest.h>

#include "wear/false_discovery.hpp"

namespace early_counts_test {

using namespace sparewell::wear;
using doctest::Approx;

TEST_CASE("The points of a multiplier integrate what a Gamma law integrates") {
  for (const double theta : {0.05, 0.2, 0.8, 3.0}) {
    CAPTURE(theta);
    const auto points = multiplier_points(Multiplier::after(theta, 0, 0));
    double weight = 0, mean = 0, square = 0, laplace = 0;
    for (const auto& [value, share] : points) {
      weight += share;
      mean += share * value;
      square += share * value * value;
      laplace += share * std::exp(-0.7 * value);
    }
    CHECK(weight == Approx(1).epsilon(1e-12));
    CHECK(mean == Approx(1).epsilon(1e-12));
    CHECK(square == Approx(1 + theta).epsilon(1e-11));
    CHECK(laplace == Approx(std::pow(1 + 0.7 * theta, -1 / theta)).epsilon(1e-9));
  }
  const auto posterior = multiplier_points(Multiplier{7, 4});
  double mean = 0;
  for (const auto& [value, share] : posterior) mean += share * value;
  CHECK(mean == Approx(7.0 / 4));
  CHECK(multiplier_points(Multiplier{}).size() == 1);
}

TEST_CASE("Without differences among patients the count is Poisson-binomial") {
  const std::vector<double> chances{0.1, 0.02, 0.1, 0.07, 0.1, 0.1, 0.05};
  std::vector<HazardsOfPatient> patients(3);
  for (std::size_t i = 0; i < chances.size(); ++i) {
    patients[i % 3].push_back(-std::log1p(-chances[i]));
  }
  const auto one = multiplier_points(Multiplier{});
  for (int count = 0; count <= 8; ++count) {
    CHECK(chance_of_early_endings(count, patients, one) ==
          Approx(count > 7 ? 0 : chance_of_at_least(count, chances)).epsilon(1e-12));
  }
  CHECK(expected_early_endings(patients, one) == Approx(0.54));
}

TEST_CASE("One patient's count is that of lives mixed over the multiplier, by integration") {
  const double theta = 0.6;
  const HazardsOfPatient hazards(5, 0.10536);
  // P(all five early) = integral of (1 - exp(-z h))^5 over Gamma(1 / theta, 1 / theta).
  boost::math::quadrature::tanh_sinh<double> integrate;
  const double a = 1 / theta;
  const auto density = [&](double z) {
    return std::exp(a * std::log(a) - std::lgamma(a) + (a - 1) * std::log(z) - a * z);
  };
  const double all_five = integrate.integrate(
      [&](double z) { return std::pow(-std::expm1(-z * hazards[0]), 5) * density(z); }, 0.0, 60.0);
  const std::vector<HazardsOfPatient> one{hazards};
  CHECK(chance_of_early_endings(5, one, multiplier_points(Multiplier::after(theta, 0, 0))) ==
        Approx(all_five).epsilon(1e-6));
}

TEST_CASE("Counts over several patients agree with lives played out") {
  const double theta = 0.5;
  const std::vector<HazardsOfPatient> patients{
      {0.1, 0.1, 0.1, 0.05}, {0.1}, {0.1, 0.02}, {0.1, 0.1}};
  const auto points = multiplier_points(Multiplier::after(theta, 0, 0));
  std::mt19937_64 random{17};
  std::gamma_distribution<double> multiplier{1 / theta, theta};
  std::uniform_real_distribution<double> uniform{0, 1};
  const int games = 400000;
  std::vector<int> seen(10, 0);
  for (int i = 0; i < games; ++i) {
    std::size_t count = 0;
    for (const auto& hazards : patients) {
      const double z = multiplier(random);
      for (const double hazard : hazards) count += uniform(random) < -std::expm1(-z * hazard);
    }
    for (std::size_t n = 0; n <= count; ++n) ++seen[n];
  }
  for (int count = 1; count <= 4; ++count) {
    const double share = seen[static_cast<std::size_t>(count)] / double(games);
    const double error = std::sqrt(share * (1 - share) / games);
    CHECK(std::abs(chance_of_early_endings(count, patients, points) - share) < 4 * error + 1e-6);
  }
}

}  // namespace early_counts_test
