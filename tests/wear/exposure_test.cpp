#include "wear/exposure.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "wear/small_clinic.hpp"

namespace exposure_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

namespace {

Exposure exposure_of(const Clinic& clinic, std::size_t unit, int today) {
  const ClinicIndex index{clinic};
  const Exposures exposures{clinic, index, day_zero + days{today}};
  const Unit& of = clinic.units[unit];
  return exposures.of(of, index.item(of.item)->kind);
}

Usage kneeling(std::string patient, int from, double hours) {
  Usage made = usage(std::move(patient), from);
  made.kneeling_hours = hours;
  return made;
}

double days_worn(const Exposure& exposure) {
  return wear_age(exposure.spans, {});
}

}  // namespace

TEST_CASE("A life is cut where the usage changes, and the first record holds before its date") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 0, 100)};
  clinic.usage = {kneeling("P", 60, 4), kneeling("P", 20, 2), kneeling("Q", 0, 9)};
  const Exposure exposure = exposure_of(clinic, 0, 500);
  // By hand: 60 days at 2 hours (from the issue on), 40 days at 4 hours.
  REQUIRE(exposure.spans.size() == 2);
  FactorVector beta{};
  beta[1] = 0.1;
  CHECK(wear_age(exposure.spans, beta) ==
        Approx(60 * std::exp(0.2) + 40 * std::exp(0.4)).epsilon(1e-14));
  CHECK(exposure.at_end[1] == 4);
  CHECK(exposure.worn_out);
}

TEST_CASE("A record on the day of the end does not touch the life that ended") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 0, 50)};
  clinic.usage = {kneeling("P", 0, 1), kneeling("P", 50, 8)};
  const Exposure exposure = exposure_of(clinic, 0, 500);
  CHECK(exposure.spans.size() == 1);
  CHECK(exposure.at_end[1] == 1);
}

TEST_CASE("Spans with the same factors are merged") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 0, 90)};
  clinic.usage = {kneeling("P", 0, 1), kneeling("P", 30, 2), kneeling("P", 60, 1)};
  const Exposure exposure = exposure_of(clinic, 0, 500);
  REQUIRE(exposure.spans.size() == 2);
  CHECK(exposure.spans[0].days == 60);
  CHECK(exposure.spans[1].days == 30);
}

TEST_CASE("A unit in use, or that ends later, has lived until today and is not worn out") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 0), unit("P", "K", 0, 80)};
  for (std::size_t i : {0U, 1U}) {
    const Exposure exposure = exposure_of(clinic, i, 50);
    CHECK(days_worn(exposure) == 50);
    CHECK_FALSE(exposure.worn_out);
  }
}

TEST_CASE("Only endings by wear are events") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 0, 80, EndReason::lost), unit("P", "K", 0, 80, EndReason::hole),
                  unit("P", "K", 0, 80, std::nullopt)};
  CHECK_FALSE(exposure_of(clinic, 0, 100).worn_out);
  CHECK(exposure_of(clinic, 1, 100).worn_out);
  CHECK_FALSE(exposure_of(clinic, 2, 100).worn_out);
}

TEST_CASE("A life of zero days counts as half a day, and a unit issued today has not been worn") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 10, 10), unit("P", "K", 10), unit("P", "L", 10, 10)};
  CHECK(days_worn(exposure_of(clinic, 0, 50)) == 0.5);
  CHECK(exposure_of(clinic, 1, 10).spans.empty());
  CHECK(days_worn(exposure_of(clinic, 2, 50)) == 0.5);
}

TEST_CASE("Liners in use together on one side alternate, as units come and go") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "L", 0, 100), unit("P", "G", 40, 70), unit("P", "L", 60)};
  // By hand, for the first: 40 alone, 20 by halves, 10 by thirds, 30 by halves.
  CHECK(days_worn(exposure_of(clinic, 0, 200)) == Approx(40 + 10 + 10.0 / 3 + 15));
  CHECK(days_worn(exposure_of(clinic, 1, 200)) == Approx(10 + 10.0 / 3));
  // The third: 10 by thirds, 30 by halves, 100 alone.
  CHECK(days_worn(exposure_of(clinic, 2, 200)) == Approx(10.0 / 3 + 15 + 100));
}

TEST_CASE("Shares of liners used together add up to all of the time") {
  Clinic clinic = small_clinic();
  for (int i = 0; i < 6; ++i) clinic.units.push_back(unit("P", "L", 7 * i, 60 + 11 * i));
  double worn = 0;
  for (std::size_t i = 0; i < 6; ++i) worn += days_worn(exposure_of(clinic, i, 300));
  CHECK(worn == Approx(60 + 55));
}

TEST_CASE("The other side, other patients, recorded shares and other kinds do not alternate") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "L", 0, 100), unit("P", "L", 0, 100), unit("Q", "L", 0, 100),
                  unit("P", "L", 0, 100), unit("P", "K", 0, 100), unit("P", "K", 0, 100)};
  clinic.units[1].side = Side::right;
  clinic.units[3].share = 0.25;
  CHECK(days_worn(exposure_of(clinic, 0, 200)) == 100);
  CHECK(days_worn(exposure_of(clinic, 3, 200)) == 25);
  CHECK(days_worn(exposure_of(clinic, 4, 200)) == 100);
}

TEST_CASE("A unit in the drawer does not age") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "L", 0)};
  clinic.units[0].share = 0;
  const Exposure exposure = exposure_of(clinic, 0, 200);
  CHECK(exposure.spans.empty());
  CHECK(days_worn(exposure) == 0);
}

TEST_CASE("A liner issued after today leaves the share of today's liner alone") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "L", 0), unit("P", "L", 100)};
  CHECK(days_worn(exposure_of(clinic, 0, 50)) == 50);
}

}  // namespace exposure_test
