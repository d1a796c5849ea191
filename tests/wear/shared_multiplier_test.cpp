#include "wear/shared_multiplier.hpp"

#include <cmath>

#include <boost/math/quadrature/exp_sinh.hpp>
#include <doctest/doctest.h>

#include "wear/small_clinic.hpp"
#include "wear/unit_life.hpp"

namespace shared_multiplier_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

namespace {

/// What one group adds to the log-likelihood beyond its log baseline hazards.
double group_term(std::size_t endings, double hazard, double theta) {
  EndingCounts counts;
  for (std::size_t j = 0; j < endings; ++j) counts.add(j);
  return counts.terms(theta).value +
         multiplier_terms(static_cast<double>(endings), hazard, theta).value;
}

UnitLife life_of(double age, Multiplier person) {
  return {day_zero, age, 2.2, 300, {{day_zero, 1}}, person};
}

}  // namespace

TEST_CASE("The marginal likelihood of a group is the integral over its multiplier") {
  boost::math::quadrature::exp_sinh<double> quadrature;
  for (const double theta : {0.1, 0.5, 2.0}) {
    for (const int endings : {0, 1, 3, 8}) {
      for (const double hazard : {0.05, 1.2, 9.0}) {
        const double a = 1 / theta;
        const auto integrand = [&](double z) {
          const double log_z = std::log(z);
          return std::exp(a * std::log(a) - std::lgamma(a) + (a - 1 + endings) * log_z -
                          (a + hazard) * z);
        };
        const double integral = quadrature.integrate(integrand, 1e-12);
        CHECK(group_term(static_cast<std::size_t>(endings), hazard, theta) ==
              Approx(std::log(integral)).epsilon(1e-9));
      }
    }
  }
}

TEST_CASE("A hundred thousand endings of one group lose no digits") {
  const double theta = 0.3;
  const double a = 1 / theta;
  const double endings = 1e5;
  const double hazard = 9.1e4;
  const double closed = std::lgamma(a + endings) - std::lgamma(a) + a * std::log(a) -
                        (a + endings) * std::log(a + hazard);
  CHECK(group_term(100000, hazard, theta) == Approx(closed).epsilon(1e-10));
}

TEST_CASE("The posterior of the multiplier is that of the worked example") {
  // Gamma(2, 2), 3 endings, summed hazard 1.2: mean 5 / 3.2, variance 5 / 3.2^2 (computed by hand
  // from the conjugate posterior of a gamma frailty).
  const Multiplier person = Multiplier::after(0.5, 3, 1.2);
  CHECK(person.shape() == Approx(5));
  CHECK(person.rate() == Approx(3.2));
  CHECK(person.mean() == Approx(1.5625));
  CHECK(person.variance() == Approx(0.48828125));
}

TEST_CASE("The chance of wearing out is mixed over the multiplier") {
  const Multiplier person = Multiplier::after(0.5, 3, 1.2);
  const UnitLife life = life_of(150, person);
  for (const double further : {1.0, 60.0, 400.0}) {
    const double hazard = std::pow((150 + further) / 300, 2.2) - std::pow(0.5, 2.2);
    // Marginal survival ((b) / (b + H))^a of a gamma frailty: from memory, a standard result.
    CHECK(life.chance_at_wear(further) ==
          Approx(1 - std::pow(3.2 / (3.2 + hazard), 5)).epsilon(1e-12));
    boost::math::quadrature::exp_sinh<double> quadrature;
    const double survived = quadrature.integrate(
        [&](double z) {
          return std::exp(5 * std::log(3.2) - std::lgamma(5.0) + 4 * std::log(z) -
                          (3.2 + hazard) * z);
        },
        1e-12);
    CHECK(life.chance_at_wear(further) == Approx(1 - survived).epsilon(1e-9));
  }
}

TEST_CASE("Dates with a multiplier are the first by whose end the chance is reached") {
  for (const double theta : {1e-9, 0.2, 3.0}) {
    for (const double age : {0.0, 80.0, 700.0}) {
      const UnitLife life = life_of(age, Multiplier::after(theta, 2, 0.7));
      for (const double p : standard_chances) {
        const auto day = life.worn_out_date(p);
        REQUIRE(day.has_value());
        CHECK(life.chance_worn_by(*day) >= p);
        CHECK(life.chance_worn_by(*day - days{1}) < p);
      }
    }
  }
}

TEST_CASE("As the variance goes to 0 a life is that without multiplier, whatever the history") {
  const UnitLife plain = life_of(150, {});
  for (const double theta : {1e-11, 1e-15, 1e-300, 1e-320, 0.0}) {
    const UnitLife near = life_of(150, Multiplier::after(theta, 5, 2.5));
    for (const double further : {0.5, 40.0, 300.0, 3000.0}) {
      CHECK(std::abs(near.chance_at_wear(further) - plain.chance_at_wear(further)) < 1e-9);
    }
    CHECK(near.worn_out_date(0.5) == plain.worn_out_date(0.5));
    CHECK(near.person_scale_days() == Approx(300));
  }
}

TEST_CASE("A mean multiplier of 2 is half the scale to the power of one over the shape") {
  const UnitLife life = life_of(0, {4, 2});
  CHECK(life.person_scale_days() == Approx(300 * std::pow(2, -1 / 2.2)));
}

TEST_CASE("A multiplier that cannot be is not made") {
  CHECK_THROWS_AS((Multiplier{0, 1}), std::invalid_argument);
  CHECK_THROWS_AS((Multiplier{1, -1}), std::invalid_argument);
  CHECK_THROWS_AS((Multiplier{NAN, 1}), std::invalid_argument);
  CHECK_THROWS_AS((Multiplier{HUGE_VAL, 1}), std::invalid_argument);
}

}  // namespace shared_multiplier_test
