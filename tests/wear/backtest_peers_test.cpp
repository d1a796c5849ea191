#include "wear/backtest_peers.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "wear/small_clinic.hpp"

namespace backtest_peers_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;

namespace {

/// Liners that lasted 100, 200 and 300 days, one in use since day 350, and a lock without history.
Clinic clinic_with_lives() {
  Clinic clinic = small_clinic();
  clinic.units = {unit("A", "L", 0, 100), unit("A", "L", 100, 300), unit("B", "L", 0, 300),
                  unit("B", "L", 350), unit("B", "K", 350)};
  return clinic;
}

const Date day_400 = day_zero + days{400};

}  // namespace

TEST_CASE("Calendar lives run from issue to end or today, and only wear is an event") {
  Clinic clinic = clinic_with_lives();
  clinic.units[1].end_reason = EndReason::lost;
  clinic.units.push_back(unit("C", "L", 400));
  clinic.units.push_back(unit("C", "L", 420, 421));
  clinic.units.push_back(unit("C", "L", 10, 10));
  const auto liners = calendar_lives(clinic, day_400).at(Kind::liner);
  REQUIRE(liners.size() == 5);
  CHECK(liners[0].days == 100);
  CHECK(liners[0].worn_out);
  CHECK(liners[1].days == 200);
  CHECK(!liners[1].worn_out);
  CHECK(liners[3].days == 50);
  CHECK(!liners[3].worn_out);
  CHECK(liners[4].days == 0.5);
}

TEST_CASE("The calendar rule puts every unit at its kind's median life, or the prior's") {
  const Clinic clinic = clinic_with_lives();
  const PriorTable priors = plain_priors();
  const CalendarRule rule{clinic, priors, day_400};
  // By hand: 3 at risk at 100, 2 at 200: 2/3, then 1/3.
  CHECK(rule.interval_days(clinic.items[0]) == 200);
  CHECK(rule.interval_days(clinic.items[3]) == doctest::Approx(250));
  const auto chances = rule.chances(clinic.units[3], clinic.items[0], 180);
  REQUIRE(chances.size() == 181);
  CHECK(chances[149] == 0);
  CHECK(chances[150] == 1);
  CHECK(chances[180] == 1);
}

TEST_CASE("A unit past its calendar interval is due at once") {
  const Clinic clinic = clinic_with_lives();
  const PriorTable priors = plain_priors();
  const Date later = day_zero + days{700};
  const auto chances =
      CalendarRule{clinic, priors, later}.chances(clinic.units[3], clinic.items[0], 10);
  CHECK(chances[0] == 0);
  CHECK(chances[1] == 1);
}

TEST_CASE("The clinic-wide Weibull is conditional on the age and falls back on the prior") {
  const Clinic clinic = clinic_with_lives();
  const PriorTable priors = plain_priors();
  const ClinicWeibull weibull{clinic, priors, day_400};
  // The lock: prior shape 2 and median 250, age 50; by hand from the Weibull survival function.
  const double scale = 250 / std::sqrt(std::log(2.0));
  const auto lock = weibull.chances(clinic.units[4], clinic.items[3], 100);
  CHECK(lock[0] == 0);
  CHECK(lock[100] == doctest::Approx(1 - std::exp(-(150.0 * 150 - 50.0 * 50) / (scale * scale))));
  const auto liner = weibull.chances(clinic.units[3], clinic.items[0], 600);
  CHECK(liner[100] > 0.05);
  CHECK(liner[100] < 0.5);
  CHECK(liner[600] > 0.99);
}

}  // namespace backtest_peers_test
