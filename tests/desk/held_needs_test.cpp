#include "desk/held_needs.hpp"

#include <doctest/doctest.h>

#include "supply/proposal.hpp"

using namespace sparewell;
using namespace sparewell::desk;
using supply::Pmf;

namespace {

const Date today = make_date(2026, 11, 25);

/// One patient with a liner of mineral-oil gel, 24 to 26 cm at 4 cm.
struct Worn {
  Clinic clinic;
  std::vector<wear::LifeOfUnit> lives;

  Worn() {
    Item item;
    item.code = {"LG-24"};
    item.kind = Kind::liner;
    item.material = Material::mineral_oil_gel;
    item.constituents = {"mineral oil"};
    item.size_min_cm = 24;
    item.size_max_cm = 26;
    item.size_at_cm = 4;
    clinic.items.push_back(item);
    Patient patient;
    patient.ref = {"P-1"};
    clinic.patients.push_back(patient);
    Unit unit;
    unit.patient = {"P-1"};
    unit.item = {"LG-24"};
    unit.issued_on = today - days{200};
    clinic.units.push_back(unit);
    lives.push_back({0, wear::UnitLife{today, 200, 2, 250, {{unit.issued_on, 1.0}}}});
  }
  void measure(double circumference, int days_ago) {
    clinic.measurements.push_back({{"P-1"}, Side::left, today - days{days_ago}, 4, circumference});
  }
};

}  // namespace

TEST_CASE("A part that its patient reacts to is not ordered again") {
  Worn given;
  CHECK(held_needs(given.clinic, given.lives, today).empty());
  Sensitivity recorded;
  recorded.patient = {"P-1"};
  recorded.substance = "mineral oil";
  given.clinic.sensitivities.push_back(recorded);
  const auto held = held_needs(given.clinic, given.lives, today);
  REQUIRE(held.size() == 1);
  CHECK(held[0].sensitivity);
  CHECK(held[0].chance == doctest::Approx(given.lives[0].life.chance_worn_by(today + days{90})));
  CHECK(held[0].words.find("clinician") != std::string::npos);
  CHECK(without_held(given.lives, held).empty());
}

TEST_CASE("Another patient's sensitivity holds nothing back") {
  Worn given;
  Sensitivity recorded;
  recorded.patient = {"P-2"};
  recorded.substance = "mineral oil";
  given.clinic.sensitivities.push_back(recorded);
  CHECK(held_needs(given.clinic, given.lives, today).empty());
}

TEST_CASE("A size that the limb has left by a fresh measurement is not ordered again") {
  Worn given;
  given.measure(25, 30);
  CHECK(held_needs(given.clinic, given.lives, today).empty());
  given.measure(23, 10);
  const auto held = held_needs(given.clinic, given.lives, today);
  REQUIRE(held.size() == 1);
  CHECK(!held[0].sensitivity);
  Worn old;
  old.measure(23, 300);
  CHECK(held_needs(old.clinic, old.lives, today).empty());
}

TEST_CASE("A limb that has left a size is foreseen to need the size that suits it") {
  Worn given;
  Item smaller = given.clinic.items[0];
  smaller.code = {"LG-22"};
  smaller.size_min_cm = 22;
  smaller.size_max_cm = 24;
  given.clinic.items.push_back(smaller);
  given.measure(23, 10);
  const auto held = held_needs(given.clinic, given.lives, today);
  REQUIRE(held.size() == 1);
  CHECK(held[0].next_item == ItemCode{"LG-22"});
  CHECK(held[0].words.find("LG-22") != std::string::npos);
  const auto lives = without_held(given.lives, held);
  REQUIRE(lives.size() == 1);
  CHECK(lives[0].next_item == ItemCode{"LG-22"});
  const Pmf same = supply::demand(given.clinic, lives, {"LG-24"}, today, 90);
  const Pmf next = supply::demand(given.clinic, lives, {"LG-22"}, today, 90);
  CHECK(same.mean() == 0);
  CHECK(next.mean() > 0.2);
  // Not when the patient reacts to it.
  Sensitivity recorded;
  recorded.patient = {"P-1"};
  recorded.substance = "mineral oil";
  given.clinic.sensitivities.push_back(recorded);
  CHECK(without_held(given.lives, held_needs(given.clinic, given.lives, today)).empty());
}
