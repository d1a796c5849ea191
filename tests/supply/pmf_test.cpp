#include "supply/pmf.hpp"

#include <algorithm>
#include <numeric>
#include <random>
#include <stdexcept>

#include <doctest/doctest.h>

namespace pmf_test {

using namespace sparewell::supply;

namespace {

double total(const Pmf& pmf) {
  return std::accumulate(pmf.mass().begin(), pmf.mass().end(), 0.0);
}

std::vector<Pmf> bernoulli(const std::vector<double>& chances) {
  std::vector<Pmf> made;
  for (const double p : chances) made.emplace_back(std::vector<double>{1 - p, p});
  return made;
}

/// The distribution of the sum by going through all 2^n outcomes.
std::vector<double> enumerated(const std::vector<double>& chances) {
  std::vector<double> mass(chances.size() + 1, 0.0);
  for (unsigned outcome = 0; outcome < 1U << chances.size(); ++outcome) {
    double chance = 1;
    std::size_t count = 0;
    for (std::size_t i = 0; i < chances.size(); ++i) {
      const bool happens = (outcome >> i & 1U) != 0;
      chance *= happens ? chances[i] : 1 - chances[i];
      count += happens ? 1 : 0;
    }
    mass[count] += chance;
  }
  return mass;
}

}  // namespace

TEST_CASE("The sum of unequal chances is the Poisson-binomial distribution") {
  // Inputs: reference example of the R package poibin (Comput Stat Data Anal 2013;59:41-51);
  // values computed exactly by an independent script, not printed there.
  const std::vector<double> weights_1{0.1512, 0.3714, 0.3274, 0.1274, 0.0214, 0.0012};
  const Pmf once = convolve_all(bernoulli({.1, .2, .3, .4, .5}));
  REQUIRE(once.mass().size() == weights_1.size());
  for (std::size_t n = 0; n < weights_1.size(); ++n) {
    CHECK(once.mass()[n] == doctest::Approx(weights_1[n]).epsilon(1e-12));
  }
  const std::vector<double> weights_2{0.02286144, 0.11231136, 0.23694372, 0.28171848,
                                      0.20829484, 0.09968032, 0.03113484, 0.00623848,
                                      0.00076372, 0.00005136, 0.00000144};
  const Pmf twice = convolve_all(bernoulli({.1, .1, .2, .2, .3, .3, .4, .4, .5, .5}));
  REQUIRE(twice.mass().size() == weights_2.size());
  for (std::size_t n = 0; n < weights_2.size(); ++n) {
    CHECK(twice.mass()[n] == doctest::Approx(weights_2[n]).epsilon(1e-10));
  }
  CHECK(twice.at_most(4) == doctest::Approx(0.86212984).epsilon(1e-12));
  CHECK(twice.more_than(4) == doctest::Approx(1 - 0.86212984).epsilon(1e-12));
}

TEST_CASE("Every small set of chances gives what enumeration of all outcomes gives") {
  std::mt19937 random{7};
  std::uniform_real_distribution<double> chance{0, 1};
  for (std::size_t size = 1; size <= 12; ++size) {
    std::vector<double> chances(size);
    for (double& p : chances) p = chance(random);
    const auto wanted = enumerated(chances);
    const Pmf made = convolve_all(bernoulli(chances));
    for (std::size_t n = 0; n < wanted.size(); ++n) {
      const double mass = n < made.mass().size() ? made.mass()[n] : 0;
      CHECK(mass == doctest::Approx(wanted[n]).epsilon(1e-12));
    }
  }
}

TEST_CASE("Ten thousand parts keep a total of 1 and the mean, in any order") {
  std::mt19937 random{11};
  std::uniform_real_distribution<double> chance{0, 0.3};
  std::vector<double> chances(10000);
  for (double& p : chances) p = chance(random);
  const double mean = std::accumulate(chances.begin(), chances.end(), 0.0);
  const Pmf one = convolve_all(bernoulli(chances));
  std::ranges::shuffle(chances, random);
  const Pmf other = convolve_all(bernoulli(chances));
  CHECK(std::abs(total(one) - 1) < 1e-12);
  CHECK(one.mean() == doctest::Approx(mean).epsilon(1e-11));
  for (int n = 1300; n < 1700; n += 10) {
    CHECK(one.at_most(n) == doctest::Approx(other.at_most(n)).epsilon(1e-10));
  }
  CHECK(one.least_covering(0.95) == other.least_covering(0.95));
}

TEST_CASE("Trailing masses below 1e-15 are moved, not lost") {
  const Pmf pmf{{0.5, 0.5 - 3e-16, 2e-16, 1e-16}};
  CHECK(pmf.mass().size() == 2);
  CHECK(std::abs(total(pmf) - 1) < 1e-15);
}

TEST_CASE("The cover is the least count that reaches the chance") {
  const Pmf pmf{{0.5, 0.3, 0.15, 0.05}};
  CHECK(pmf.least_covering(0.5) == 0);
  CHECK(pmf.least_covering(0.51) == 1);
  CHECK(pmf.least_covering(0.95) == 2);
  CHECK(pmf.least_covering(0.9501) == 3);
  CHECK(pmf.at_most(-1) == 0);
  CHECK(pmf.more_than(-1) == 1);
  CHECK(pmf.at_most(99) == 1);
  CHECK(pmf.more_than(99) == 0);
  CHECK_THROWS_AS((void)pmf.least_covering(1), std::invalid_argument);
  CHECK_THROWS_AS((void)pmf.least_covering(0), std::invalid_argument);
}

TEST_CASE("What is not a distribution is refused") {
  CHECK_THROWS_AS(Pmf({0.5, 0.4}), std::invalid_argument);
  CHECK_THROWS_AS(Pmf({1.5, -0.5}), std::invalid_argument);
  CHECK_THROWS_AS(Pmf(std::vector<double>{}), std::invalid_argument);
}

TEST_CASE("A mixture weighs its parts, of any length") {
  const Pmf mixed = mix({0.25, 0.75}, {Pmf{}, Pmf{{0.2, 0.3, 0.5}}});
  CHECK(mixed.mass()[0] == doctest::Approx(0.4));
  CHECK(mixed.mass()[2] == doctest::Approx(0.375));
  CHECK(convolve_all({}).mean() == 0);
}

TEST_CASE("A binomial count is what enumeration gives") {
  const Pmf made = binomial(3, 0.2);
  CHECK(made.mass()[0] == doctest::Approx(0.512));
  CHECK(made.mass()[1] == doctest::Approx(0.384));
  CHECK(made.mass()[2] == doctest::Approx(0.096));
  CHECK(made.mass()[3] == doctest::Approx(0.008));
  CHECK(binomial(0, 0.2).mean() == 0);
  CHECK(binomial(5, 0).mean() == 0);
}

}  // namespace pmf_test
