/// Clinics whose records begin when units were already in use.
#include "wear/records_begin.hpp"

#include <cmath>
#include <random>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "wear/clinic_fit.hpp"
#include "wear/small_clinic.hpp"
#include "wear/unit_life.hpp"

namespace records_begin_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

namespace {

constexpr int begin_day = 800;
constexpr int today_at = 1400;
const Date today = day_zero + days{today_at};
const Date records_begin = day_zero + days{begin_day};

/// Patients wear locks one after another from about day zero on, with scale 300 and shape 2. In the
/// records from `from_day` on; units that ended before are left out.
Clinic supplied(int patients, int from_day) {
  Clinic clinic = small_clinic();
  std::minstd_rand0 random{2718};
  const auto uniform = [&] { return static_cast<double>(random()) / 2147483647.0; };
  for (int i = 0; i < patients; ++i) {
    int day = static_cast<int>(300 * uniform());
    while (day < today_at) {
      const int end = day + 1 + static_cast<int>(300 * std::sqrt(-std::log(uniform())));
      if (end >= from_day) clinic.units.push_back(unit(fmt::format("P{}", i), "K", day, end));
      day = end;
    }
  }
  return as_of(clinic, today);
}

KindLife lock_of(const ClinicLife& fitted) {
  return fitted.kinds.at(Kind::lock);
}

double lock_scale(const ClinicLife& fitted) {
  return lock_of(fitted).item_scale.at({"K"});
}

}  // namespace

TEST_CASE("Lives under way when the records begin are counted from there on") {
  Clinic clinic = supplied(400, begin_day);
  clinic.settings.records_begin = records_begin;
  const ClinicLife fitted = fit_clinic(clinic, plain_priors(), today);
  REQUIRE(lock_of(fitted).converged);
  CHECK(fitted.records_begin == records_begin - days{1});
  const double error = std::sqrt(lock_of(fitted).covariance(1, 1));
  CHECK(error < 0.1);
  CHECK(std::abs(std::log(lock_scale(fitted) / 300)) < 3 * error);
  CHECK(std::abs(std::log(lock_of(fitted).shape / 2)) < 0.15);
  CHECK(lock_of(fitted).theta < 0.1);
}

TEST_CASE("Records that begin later than the first issue give themselves away") {
  const Clinic clinic = supplied(400, begin_day);
  const ClinicLife fitted = fit_clinic(clinic, plain_priors(), today);
  REQUIRE(fitted.records_begin.has_value());
  CHECK(days_between(records_begin, *fitted.records_begin) >= 0);
  CHECK(days_between(records_begin, *fitted.records_begin) < 5);
  CHECK(std::abs(std::log(lock_scale(fitted) / 300)) < 0.06);
}

TEST_CASE("Complete records are taken as such, small and large") {
  for (const int patients : {1, 10, 400}) {
    CAPTURE(patients);
    const ClinicLife fitted = fit_clinic(supplied(patients, 0), plain_priors(), today);
    CHECK_FALSE(fitted.records_begin.has_value());
  }
  CHECK_FALSE(fit_clinic(small_clinic(), plain_priors(), today).records_begin.has_value());
}

TEST_CASE("A unit that entered late ages from its issue, but its past says nothing of its wearer") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 0, 700), unit("P", "K", 700)};
  clinic.settings.records_begin = records_begin;
  ClinicLife known;
  KindLife life;
  life.kind = Kind::lock;
  life.shape = 2;
  life.scale[Material::metal] = 300;
  life.theta = 0.5;
  known.kinds[Kind::lock] = life;
  known.records_begin = records_begin;
  const auto lives = lives_of_units_in_use(clinic, known, day_zero + days{900});
  REQUIRE(lives.size() == 1);
  CHECK(lives[0].life.wear_age_days() == Approx(200));
  CHECK(lives[0].life.person().shape() == Approx(2));  // the ending on day 700 is not counted
  CHECK(lives[0].life.person().rate() == Approx(2 + (200.0 * 200 - 100 * 100) / (300 * 300)));
}

TEST_CASE("Other endings are counted from there on too") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 0, 1000, EndReason::lost), unit("P", "K", 0, 500, EndReason::lost),
                  unit("P", "K", 900)};
  const auto rate = other_endings(clinic, {}, day_zero + days{1000}, records_begin)
                        .at(Kind::lock)
                        .of(EndReason::lost);
  CHECK(rate.endings == Approx(1));
  CHECK(rate.days == Approx(200 + 100));
}

}  // namespace records_begin_test
