#include "wear/unit_life.hpp"

#include <cmath>

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <doctest/doctest.h>

#include "wear/small_clinic.hpp"

namespace unit_life_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

namespace {

UnitLife steady(double wear_age, double shape, double scale, double rate = 1) {
  return {day_zero, wear_age, shape, scale, {{day_zero, rate}}};
}

double weibull_density(double x, double shape, double scale) {
  return shape / scale * std::pow(x / scale, shape - 1) * std::exp(-std::pow(x / scale, shape));
}

}  // namespace

TEST_CASE("The chance of wearing out is the integral of the density over what is left") {
  using Quadrature = boost::math::quadrature::gauss_kronrod<double, 61>;
  for (const double shape : {0.8, 1.0, 1.7, 3.5}) {
    for (const double age : {20.0, 150.0, 600.0}) {
      const UnitLife life = steady(age, shape, 300);
      const auto density = [&](double x) { return weibull_density(x, shape, 300); };
      const double worn = Quadrature::integrate(density, age, age + 90, 15, 1e-12);
      const double lasted = std::exp(-std::pow(age / 300, shape));
      CHECK(life.chance_worn_by(day_zero + days{90}) == Approx(worn / lasted).epsilon(1e-9));
    }
  }
}

TEST_CASE("With shape one a part has no memory of its age") {
  const UnitLife fresh = steady(0, 1, 200);
  const UnitLife old = steady(730, 1, 200);
  for (const double further : {0.001, 1.0, 50.0, 3000.0}) {
    CHECK(old.chance_at_wear(further) == Approx(fresh.chance_at_wear(further)).epsilon(1e-12));
    CHECK(fresh.chance_at_wear(further) == Approx(1 - std::exp(-further / 200)).epsilon(1e-12));
  }
  CHECK(old.worn_out_date(0.5) == fresh.worn_out_date(0.5));
}

TEST_CASE("Half of new parts are worn out by the median, counted in days from today") {
  // Median of Weibull(2, 300): 300 * sqrt(log 2) = 249.77, so the 250th day is the first.
  CHECK(steady(0, 2, 300).worn_out_date(0.5) == day_zero + days{250});
  // At twice the wear a day, 124.9.
  CHECK(steady(0, 2, 300, 2).worn_out_date(0.5) == day_zero + days{125});
}

TEST_CASE("A worn-out date is the first day by whose end the chance is reached") {
  const std::vector<RateSpan> future{{day_zero - days{5}, 0.7},
                                     {day_zero + days{40}, 2.5},
                                     {day_zero + days{60}, 0},
                                     {day_zero + days{90}, 0.01}};
  for (const double age : {0.0, 1e-6, 80.0, 5000.0}) {
    const UnitLife life{day_zero, age, 2.3, 120, future};
    for (const double p : {0.001, 0.05, 0.25, 0.5, 0.75, 0.95}) {
      const auto day = life.worn_out_date(p);
      if (!day) {
        CHECK(life.chance_worn_by(day_zero + days{36525}) < p);
        continue;
      }
      CHECK(life.chance_worn_by(*day) >= p);
      CHECK(life.chance_worn_by(*day - days{1}) < p);
    }
  }
}

TEST_CASE("Wear from today adds up over the changes of its rate") {
  const UnitLife life{day_zero,
                      0,
                      2,
                      100,
                      {{day_zero - days{9}, 9},
                       {day_zero - days{3}, 1},
                       {day_zero + days{10}, 0.5},
                       {day_zero + days{20}, 2}}};
  CHECK(life.wear_until(day_zero - days{4}) == 0);
  CHECK(life.wear_until(day_zero) == 0);
  CHECK(life.wear_until(day_zero + days{4}) == Approx(4));
  CHECK(life.wear_until(day_zero + days{25}) == Approx(10 + 5 + 10));
}

TEST_CASE("A part in use today is not worn out today, and chances only rise") {
  const UnitLife life = steady(200, 2.5, 180);
  CHECK(life.chance_worn_by(day_zero) == 0);
  double before = 0;
  for (int i = 1; i < 1000; i += 7) {
    const double chance = life.chance_worn_by(day_zero + days{i});
    CHECK(chance >= before);
    CHECK(chance <= 1);
    before = chance;
  }
  CHECK(before == Approx(1));
}

TEST_CASE("A part in the drawer has no worn-out date") {
  const UnitLife life = steady(100, 2, 300, 0);
  CHECK(life.chance_worn_by(day_zero + days{30000}) == 0);
  CHECK_FALSE(life.worn_out_date(0.05).has_value());
  CHECK_FALSE(steady(0, 2, 300, 1e-9).worn_out_date(0.5).has_value());
}

TEST_CASE("Ages far beyond any life still give chances and dates") {
  const UnitLife ancient = steady(1e9, 20, 1);
  CHECK(ancient.chance_at_wear(1) == 1);
  CHECK(ancient.worn_out_date(0.95) == day_zero + days{1});
  const UnitLife tiny = steady(1e-12, 0.1, 1e-9);
  CHECK(tiny.chance_at_wear(1) > 0);
  CHECK(tiny.chance_at_wear(1) <= 1);
}

TEST_CASE("The standard dates are in order") {
  const WornOutDates dates = worn_out_dates(steady(30, 2, 300));
  for (std::size_t i = 0; i < dates.size(); ++i) {
    REQUIRE(dates[i].has_value());
    CHECK(dates[i] == steady(30, 2, 300).worn_out_date(standard_chances[i]));
    if (i > 0) CHECK(*dates[i - 1] <= *dates[i]);
  }
}

TEST_CASE("A life that cannot be is not made") {
  CHECK_THROWS_AS(steady(-1, 2, 300), std::invalid_argument);
  CHECK_THROWS_AS(steady(0, 0, 300), std::invalid_argument);
  CHECK_THROWS_AS(steady(0, 2, NAN), std::invalid_argument);
  CHECK_THROWS_AS((UnitLife{day_zero, 0, 2, 300, {}}), std::invalid_argument);
  CHECK_THROWS_AS((UnitLife{day_zero, 0, 2, 300, {{day_zero + days{1}, 1}}}),
                  std::invalid_argument);
  CHECK_THROWS_AS(static_cast<void>(steady(0, 2, 300).worn_out_date(1)), std::invalid_argument);
}

}  // namespace unit_life_test
