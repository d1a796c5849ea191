#include "supply/moments.hpp"

#include <cmath>
#include <numeric>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/renewal.hpp"

namespace moments_test {

using namespace sparewell;
using namespace sparewell::supply;
using testing::today;

namespace {

double interpolated(const Moments& moments, double days, const std::vector<double>& values) {
  const auto weights = moments.weights(days);
  return std::inner_product(weights.begin(), weights.end(), values.begin(), 0.0);
}

/// The largest error of P(N >= 1) and P(N >= 2) between the moments, seen against their own values.
double worst(const wear::UnitLife& life, double first, double last) {
  FreshCountsCache fresh;
  const Moments moments{first, last};
  const auto tail = [&](double days, std::size_t n) {
    const auto tails = replacement_tails(life, days, fresh);
    return n < tails.size() ? tails[n] : 0.0;
  };
  double error = 0;
  for (std::size_t n = 0; n < 2; ++n) {
    std::vector<double> values;
    for (const double at : moments.at()) values.push_back(tail(at, n));
    for (double day = first; day <= last; ++day) {
      error = std::max(error, std::abs(interpolated(moments, day, values) - tail(day, n)));
    }
  }
  return error;
}

}  // namespace

TEST_CASE("A polynomial of a degree below the number of moments is met exactly") {
  // A property of interpolation.
  for (const Moments& moments : {Moments{3, 40}, Moments{2, 7}, Moments{5, 5}}) {
    std::vector<double> values;
    const auto polynomial = [&](double t) {
      return moments.at().size() < 4 ? 4 : 1 + t - 0.02 * t * t + 0.0003 * t * t * t;
    };
    for (const double at : moments.at()) values.push_back(polynomial(at));
    for (double t = moments.first(); t <= moments.last(); t += 0.5) {
      CHECK(interpolated(moments, t, values) == doctest::Approx(polynomial(t)).epsilon(1e-11));
    }
  }
}

TEST_CASE("Chances of replacement between the moments are near their own") {
  const auto unit = [](double age, double shape, double scale) {
    return wear::UnitLife{today, age, shape, scale, {{today, 1.0}}, wear::Multiplier{4, 4}};
  };
  CHECK(worst(unit(150, 2.2, 250), 7, 35) < 2e-6);
  CHECK(worst(unit(0, 2.2, 250), 7, 35) < 2e-6);
  CHECK(worst(unit(150, 2.2, 250), 12, 20) < 4e-6);  // fewer moments
  CHECK(worst(unit(0, 2.2, 250), 18, 25) < 4e-6);
  CHECK(worst(unit(80, 1.4, 60), 12, 20) < 2e-5);
  CHECK(worst(unit(0, 1.4, 60), 12, 20) < 2e-5);
  CHECK(worst(unit(80, 1.4, 60), 5, 30) < 2e-5);  // socks: replaced again and again
  CHECK(worst(unit(0, 1.4, 200), 1, 90) < 1e-4);
  CHECK(worst(unit(300, 3.5, 250), 1, 90) < 1e-4);
}

}  // namespace moments_test
