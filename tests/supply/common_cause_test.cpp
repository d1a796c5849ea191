#include "supply/common_cause.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace common_cause_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

Pmf poisson_count(double mean) {
  std::vector<double> mass(120);
  double sum = 0;
  for (std::size_t n = 0; n < mass.size(); ++n) sum += mass[n] = poisson(static_cast<int>(n), mean);
  for (double& each : mass) each /= sum;
  return Pmf{mass};
}

}  // namespace

TEST_CASE("A Poisson count with a lognormal factor is the Poisson-lognormal mixture") {
  // The mixture integrated by the trapezoid over 4,000 steps of the factor's log.
  const double mean = 12;
  const double log_sd = 0.2;
  const Pmf made = with_common_cause(poisson_count(mean), log_sd);
  CHECK(made.mean() == doctest::Approx(mean).epsilon(1e-10));
  double apart = 0;
  double at_most = 0;
  for (int n = 0; n < 60; ++n) {
    constexpr double step = 16.0 / 4000;
    for (int i = 0; i <= 4000; ++i) {
      const double x = -8 + step * i;
      const double density = std::exp(-x * x / 2) / std::sqrt(2 * 3.14159265358979323846);
      at_most += step * density * poisson(n, mean * std::exp(log_sd * x - log_sd * log_sd / 2));
    }
    apart = std::max(apart, std::abs(made.at_most(n) - at_most));
  }
  CHECK(apart < 2e-4);
}

TEST_CASE("A large count moves with the factor as a whole") {
  // Quantiles of the Poisson-lognormal mixture, by the trapezoid over 2,000 steps.
  for (const double mean : {150.0, 2500.0}) {
    const double log_sd = 0.15;
    std::vector<double> mass(static_cast<std::size_t>(3 * mean));
    for (std::size_t n = 0; n < mass.size(); ++n) {
      mass[n] = std::exp(static_cast<double>(n) * std::log(mean) - mean -
                         std::lgamma(static_cast<double>(n) + 1));
    }
    const Pmf alone{std::move(mass)};
    const Pmf made = with_common_cause(alone, log_sd);
    CHECK(made.mean() == doctest::Approx(alone.mean()).epsilon(1e-10));
    const auto covered = [&](int at) {
      double sum = 0;
      constexpr double step = 12.0 / 2000;
      for (int i = 0; i <= 2000; ++i) {
        const double x = -6 + step * i;
        const double here = mean * std::exp(log_sd * x - log_sd * log_sd / 2);
        const double density = std::exp(-x * x / 2) / std::sqrt(2 * 3.14159265358979323846);
        // P(Poisson <= at) by the normal with a continuity correction and Cornish-Fisher's skewness
        // (from memory), good to a thousandth for such means.
        const double z = (at + 0.5 - here) / std::sqrt(here);
        const double corrected = z - (z * z - 1) / (6 * std::sqrt(here));
        sum += step * density * 0.5 * std::erfc(-corrected / std::sqrt(2.0));
      }
      return sum;
    };
    for (const double wanted : {0.5, 0.9, 0.95, 0.99}) {
      const int at = made.least_covering(wanted);
      CHECK(covered(at) > wanted - 0.004);
      CHECK(covered(at - 1) < wanted + 0.004);
    }
  }
}

TEST_CASE("Units with a common factor on their odds are the mixture by enumeration") {
  // 12 units, each needed with chance 0.3; the factor at the five Gauss points by hand.
  const Pmf alone = binomial(12, 0.3);
  const Pmf made = with_common_cause(alone, 0.3);
  CHECK(made.mean() == doctest::Approx(alone.mean()).epsilon(1e-10));
  double variance = 0;
  double sum = 0;
  for (std::size_t n = 0; n < made.mass().size(); ++n) {
    const double away = static_cast<double>(n) - 3.6;
    variance += away * away * made.mass()[n];
    sum += made.mass()[n];
  }
  CHECK(sum == doctest::Approx(1).epsilon(1e-12));
  // Var N = E Var + Var E: 12 p (1 - p), a little changed, and (12 p (1 - p) 0.3)^2 to first order.
  CHECK(variance == doctest::Approx(12 * 0.21 + std::pow(12 * 0.21 * 0.3, 2)).epsilon(0.05));
}

TEST_CASE("Without a spread, or without a count, nothing changes") {
  const Pmf alone = binomial(5, 0.4);
  CHECK(with_common_cause(alone, 0).mass() == alone.mass());
  CHECK(with_common_cause(Pmf{}, 0.5).mass() == Pmf{}.mass());
}

}  // namespace common_cause_test
