#include "wear/entry.hpp"

#include <doctest/doctest.h>

#include "wear/exposure.hpp"
#include "wear/small_clinic.hpp"

namespace entry_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

namespace {

Unit with_lot(Unit made) {
  made.lot = "A";
  return made;
}

const Date today = day_zero + days{900};

}  // namespace

TEST_CASE(
    "A part without any number, older than the patient's first numbered one, was brought along") {
  Clinic clinic = small_clinic();
  const Unit old = unit("P", "K", 0, 700);
  clinic.units = {old, with_lot(unit("P", "L", 300, 600)), unit("P", "S", 400)};
  const Entries entries{clinic, today, std::nullopt};
  CHECK(entries.of(old) == day_zero + days{300});
  CHECK_FALSE(entries.of(clinic.units[1]).has_value());
  CHECK_FALSE(entries.of(clinic.units[2]).has_value());  // handed out after the numbered one

  const ClinicIndex index{clinic};
  const Exposures exposures{clinic, index, today};
  const Exposure exposure = exposures.of(old, Kind::lock);
  REQUIRE(exposure.before_entry.size() == 1);
  CHECK(exposure.before_entry[0].days == Approx(300));
  CHECK(exposure.spans[0].days == Approx(700));
}

TEST_CASE("Where parts without numbers had ended before, numbers only came into use later") {
  Clinic clinic = small_clinic();
  const Unit old = unit("P", "K", 0, 700);
  clinic.units = {old, unit("P", "S", 0, 200), with_lot(unit("P", "L", 300))};
  CHECK_FALSE(Entries{clinic, today, std::nullopt}.of(old).has_value());
}

TEST_CASE("Nobody's numbers say nothing, and the later of two entries counts") {
  Clinic clinic = small_clinic();
  const Unit old = unit("P", "K", 0, 700);
  clinic.units = {old};
  CHECK_FALSE(Entries{clinic, today, std::nullopt}.of(old).has_value());
  clinic.units.push_back(with_lot(unit("P", "L", 300)));
  CHECK(Entries{clinic, today, day_zero + days{350}}.of(old) == day_zero + days{350});
  CHECK(Entries{clinic, today, day_zero + days{250}}.of(old) == day_zero + days{300});
  // Known on an earlier day, the numbered part was not there yet.
  CHECK_FALSE(Entries{clinic, day_zero + days{299}, std::nullopt}.of(old).has_value());
}

}  // namespace entry_test
