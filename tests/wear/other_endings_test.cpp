#include "wear/other_endings.hpp"

#include <cmath>

#include <boost/math/distributions/gamma.hpp>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <doctest/doctest.h>

#include "wear/small_clinic.hpp"
#include "wear/unit_life.hpp"

namespace other_endings_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

TEST_CASE("A rate is what was seen and what was believed, per calendar day in use") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P1", "L", 0, 100, EndReason::lost),
                  unit("P1", "G", 0, 300, EndReason::resized),
                  unit("P2", "L", 50, 250, EndReason::hole),  // wear: days in use, no ending here
                  unit("P2", "L", 350),                       // in use
                  unit("P3", "S", 0, 40, EndReason::lost),    // another kind
                  unit("P4", "L", 600)};                      // not yet issued
  clinic.units[3].share = 0;                                  // in a drawer, where it can be lost
  const auto all = other_endings(clinic, plain_priors(), day_zero + days{400});
  // plain_priors: 0.01 a year, weighing 10 years.
  const EndingRate lost = all.at(Kind::liner).of(EndReason::lost);
  CHECK(lost.endings == Approx(0.1 + 1));
  CHECK(lost.days == Approx(3652.5 + 100 + 300 + 200 + 50));
  CHECK(lost.per_day() == Approx(1.1 / 4302.5));
  CHECK(all.at(Kind::liner).of(EndReason::resized).endings == Approx(1.1));
  CHECK(all.at(Kind::liner).of(EndReason::upgrade).endings == Approx(0.1));
  CHECK(all.at(Kind::sleeve).of(EndReason::lost).days == Approx(3652.5 + 40));
  CHECK(all.at(Kind::pump).of(EndReason::lost).days == Approx(3652.5));
}

TEST_CASE("Endings after today are not known yet, and a life of no days counts as half a day") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P1", "L", 0, 100, EndReason::lost),
                  unit("P2", "L", 10, 10, EndReason::reaction)};
  const auto all = other_endings(clinic, PriorTable{}, day_zero + days{60});
  CHECK(all.at(Kind::liner).of(EndReason::lost).endings == 0);
  CHECK(all.at(Kind::liner).of(EndReason::reaction).endings == 1);
  CHECK(all.at(Kind::liner).of(EndReason::reaction).days == Approx(60.5));
}

TEST_CASE("A part that goes with another that is worn out has not ended for a reason of its own") {
  Clinic clinic = small_clinic();
  clinic.units = {
      unit("P1", "L", 0, 100, EndReason::tear), unit("P1", "L", 0, 100, EndReason::returned),
      unit("P1", "L", 0, 100, EndReason::lost), unit("P2", "L", 0, 100, EndReason::returned)};
  const auto all = other_endings(clinic, PriorTable{}, day_zero + days{200});
  CHECK(all.at(Kind::liner).of(EndReason::returned).endings == 1);
  CHECK(all.at(Kind::liner).of(EndReason::lost).endings == 1);
}

TEST_CASE("Without beliefs or records there is no rate") {
  const auto all = other_endings(small_clinic(), PriorTable{}, day_zero);
  for (const EndReason reason : other_reasons) {
    CHECK(all.at(Kind::lock).of(reason).per_day() == 0);
    CHECK(all.at(Kind::lock).of(reason).hazard(1000) == 0);
  }
}

TEST_CASE("The chance of none is the exponential's mixed over what is not known of the rate") {
  using Quadrature = boost::math::quadrature::gauss_kronrod<double, 61>;
  const EndingRate rate{2.5, 900};
  const boost::math::gamma_distribution<double> belief{rate.endings, 1 / rate.days};
  for (const double t : {1.0, 100.0, 2000.0}) {
    const auto none = [&](double r) { return std::exp(-r * t) * boost::math::pdf(belief, r); };
    CHECK(std::exp(-rate.hazard(t)) == Approx(Quadrature::integrate(none, 0, 0.1, 15, 1e-12)));
    const double step = 0.01;
    CHECK(rate.per_day_after(t) ==
          Approx((rate.hazard(t + step) - rate.hazard(t - step)) / (2 * step)).epsilon(1e-6));
  }
}

TEST_CASE("Every unit in use carries the rates of its kind; a fit made without any has none") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P1", "L", 0), unit("P1", "S", 0)};
  const Date today = day_zero + days{100};
  ClinicLife fitted = fit_clinic(clinic, plain_priors(), today);
  auto lives = lives_of_units_in_use(clinic, fitted, today);
  REQUIRE(lives.size() == 2);
  CHECK(lives[0].others.of(EndReason::lost).days == Approx(3752.5));
  fitted.others.clear();
  lives = lives_of_units_in_use(clinic, fitted, today);
  CHECK(lives[0].others.of(EndReason::lost).endings == 0);
}

}  // namespace other_endings_test
