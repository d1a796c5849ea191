#include "wear/competing_endings.hpp"

#include <cmath>
#include <random>

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <doctest/doctest.h>

#include "wear/small_clinic.hpp"

namespace competing_endings_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

namespace {

constexpr double as_good_as_known = 1e9;  // endings behind a rate

UnitLife steady(double wear_age, double shape, double scale, double rate = 1) {
  return {day_zero, wear_age, shape, scale, {{day_zero, rate}}};
}

OtherEndings with(double weight, std::initializer_list<std::pair<EndReason, double>> per_day) {
  OtherEndings others;
  for (const auto& [reason, rate] : per_day) {
    others.rates[position_of(reason)] = {weight, weight / rate};
  }
  return others;
}

double sum(const EndingChances& chances) {
  return chances.in_use + chances.worn + chances.ended_otherwise();
}

/// The integral of one incidence in many small pieces.
double by_quadrature(const UnitLife& life, const OtherEndings& others, EndReason reason,
                     double days) {
  const auto incidence = [&](double t) {
    double hazard = 0;
    for (const EndingRate& rate : others.rates) hazard += rate.hazard(t);
    return (1 - life.chance_after(t)) * std::exp(-hazard) * others.of(reason).per_day_after(t);
  };
  double total = 0;
  const int pieces = 400;
  for (int i = 0; i < pieces; ++i) {
    total += boost::math::quadrature::gauss_kronrod<double, 15>::integrate(
        incidence, days * i / pieces, days * (i + 1) / pieces, 0, 0);
  }
  return total;
}

}  // namespace

TEST_CASE("Constant rates share the endings in proportion") {
  // Shape 1: an exponential life of rate 1/200. The standard result of competing exponentials.
  const UnitLife life = steady(77, 1, 200);
  const OtherEndings others =
      with(as_good_as_known, {{EndReason::lost, 0.001}, {EndReason::resized, 0.002}});
  for (const double days : {0.0, 0.5, 30.0, 365.0, 3000.0}) {
    const EndingChances made = ending_chances(life, others, days);
    const double ended = -std::expm1(-0.008 * days);
    CHECK(std::abs(made.worn - ended * 5 / 8) < 1e-5);
    CHECK(std::abs(made.of(EndReason::lost) - ended * 1 / 8) < 1e-5);
    CHECK(std::abs(made.of(EndReason::resized) - ended * 2 / 8) < 1e-5);
    CHECK(made.of(EndReason::deceased) == 0);
    CHECK(made.in_use == Approx(1 - ended).epsilon(1e-6));
    CHECK(sum(made) == Approx(1).epsilon(1e-12));
  }
  const EndingChances at_last = eventual_endings(life, others);
  CHECK(std::abs(at_last.worn - 5.0 / 8) < 1e-5);
  CHECK(at_last.in_use == 0);
  CHECK(sum(at_last) == Approx(1).epsilon(1e-12));
}

TEST_CASE("A rate that is not well known ends a part in the drawer as its Gamma mixture says") {
  OtherEndings others;
  others.rates[position_of(EndReason::lost)] = {1.5, 700};
  const UnitLife drawer = steady(10, 2, 300, 0);
  for (const double days : {10.0, 400.0, 20000.0}) {
    const EndingChances made = ending_chances(drawer, others, days);
    CHECK(std::abs(made.of(EndReason::lost) - (1 - std::pow(700 / (700 + days), 1.5))) < 1e-5);
    CHECK(made.worn < 1e-5);
  }
  CHECK(std::abs(eventual_endings(drawer, others).of(EndReason::lost) - 1) < 1e-5);
}

TEST_CASE("The chances agree with quadrature, for young, old, steep and changing lives") {
  const OtherEndings vague = with(2, {{EndReason::lost, 0.0001}, {EndReason::resized, 0.0006}});
  const OtherEndings often = with(20, {{EndReason::lost, 0.004}, {EndReason::upgrade, 0.002}});
  const std::vector<RateSpan> changing{
      {day_zero, 0.5}, {day_zero + days{90}, 0}, {day_zero + days{200}, 3}};
  const UnitLife lives[] = {
      steady(0, 2, 250),
      steady(400, 2, 250),
      steady(0, 0.8, 300),
      steady(0, 12, 1500, 0.25),
      steady(990, 40, 1000),
      {day_zero, 60, 2.2, 280, {{day_zero, 0.7}}, Multiplier::after(0.4, 3, 1.2)},
      {day_zero, 60, 2.2, 280, changing}};
  for (const UnitLife& life : lives) {
    for (const OtherEndings& others : {vague, often}) {
      for (const double days : {1.0, 45.0, 365.0, 4000.0}) {
        const EndingChances made = ending_chances(life, others, days);
        for (const EndReason reason : {EndReason::lost, EndReason::resized, EndReason::upgrade}) {
          CHECK(std::abs(made.of(reason) - by_quadrature(life, others, reason, days)) < 1e-5);
        }
        CHECK(sum(made) == Approx(1).epsilon(1e-9));
        CHECK(made.worn >= 0);
        CHECK(made.worn <= life.chance_after(days) + 1e-5);
      }
    }
  }
}

TEST_CASE("The chances agree with lives played out") {
  const OtherEndings others = with(
      3, {{EndReason::lost, 0.0004}, {EndReason::resized, 0.001}, {EndReason::recall, 0.0001}});
  const double age = 120;
  const EndingChances made = ending_chances(steady(age, 2.3, 300), others, 250);
  std::mt19937_64 random{20261125};
  std::exponential_distribution<double> exponential{1};
  const int runs = 400000;
  EndingChances played;
  played.in_use = 0;
  for (int run = 0; run < runs; ++run) {
    const double hazard = std::pow(age / 300, 2.3) + exponential(random);
    double first = 300 * std::pow(hazard, 1 / 2.3) - age;
    double* ended = &played.worn;
    for (std::size_t i = 0; i < others.rates.size(); ++i) {
      const EndingRate& rate = others.rates[i];
      if (!(rate.endings > 0)) continue;
      std::gamma_distribution<double> belief{rate.endings, 1 / rate.days};
      const double at = exponential(random) / belief(random);
      if (at < first) {
        first = at;
        ended = &played.others[i];
      }
    }
    *(first > 250 ? &played.in_use : ended) += 1.0 / runs;
  }
  const double four_errors = 4 * std::sqrt(0.25 / runs);
  CHECK(std::abs(made.in_use - played.in_use) < four_errors);
  CHECK(std::abs(made.worn - played.worn) < four_errors);
  for (std::size_t i = 0; i < played.others.size(); ++i) {
    CHECK(std::abs(made.others[i] - played.others[i]) < four_errors);
  }
}

TEST_CASE("Without other endings a part is worn out or in use; in a drawer nothing ends it") {
  const UnitLife life = steady(50, 2, 300);
  const EndingChances made = ending_chances(life, {}, 200);
  CHECK(made.worn == Approx(life.chance_after(200)).epsilon(1e-12));
  CHECK(made.ended_otherwise() == 0);
  CHECK(eventual_endings(life, {}).worn == 1);
  CHECK(eventual_endings(steady(50, 2, 300, 0), {}).in_use == 1);
}

}  // namespace competing_endings_test
