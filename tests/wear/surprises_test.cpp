#include "wear/surprises.hpp"

#include <cmath>
#include <numeric>
#include <random>

#include <doctest/doctest.h>

#include "wear/false_discovery.hpp"
#include "wear/small_clinic.hpp"

namespace surprises_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

namespace {

/// Every kind and material: Weibull with shape 2 and scale 300. Early is below 97.4 days of wear,
/// surprising below 30.1.
ClinicLife known_law() {
  ClinicLife fitted;
  for (std::size_t k = 0; k < words<Kind>().size(); ++k) {
    KindLife life;
    life.kind = static_cast<Kind>(k);
    life.shape = 2;
    for (std::size_t m = 0; m < words<Material>().size(); ++m) {
      life.scale[static_cast<Material>(m)] = 300;
    }
    life.beta = {0, 0.2, 0, 0, 0, 0};
    fitted.kinds.emplace(life.kind, life);
  }
  return fitted;
}

double chance_by(double age) {
  return 1 - std::exp(-std::pow(age / 300, 2));
}

/// What is expected of each unit when its kind had more early endings than the law says, for which
/// the law weighs as much as twenty.
double raised(double chance, double early, double expected) {
  const double excess = std::max(1.0, (20 + early) / (20 + expected));
  return 1 - std::pow(1 - chance, excess);
}

Unit of_lot(const std::string& lot, Unit made) {
  made.lot = lot;
  made.share = 1;
  return made;
}

Date day(int number) {
  return day_zero + days{number};
}

}  // namespace

TEST_CASE("A unit that wore out before one in a hundred does is listed with its numbers") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P1", "S", 0, 29),
                  unit("P2", "S", 0, 31),
                  unit("P3", "S", 0, 5, EndReason::lost),
                  unit("P4", "S", 0),
                  unit("P5", "S", 0, 12, EndReason::hole),
                  unit("P6", "S", 0, 25)};
  Usage kneels = usage("P6", 0);
  kneels.kneeling_hours = 2;  // 25 days of kneeling are 37 of reference use
  clinic.usage = {kneels};
  const auto found = find_surprises(clinic, known_law(), day(400));
  REQUIRE(found.units.size() == 2);
  CHECK(found.units[0].unit == 4);
  CHECK(found.units[0].wear_age_days == Approx(12));
  CHECK(found.units[0].chance == Approx(chance_by(12)));
  CHECK(found.units[0].median_days == Approx(300 * std::sqrt(std::log(2.0))));
  CHECK(found.units[1].unit == 0);
  // Five had the full chance; the lost one could show no more than five days.
  CHECK(found.units_by_chance == Approx(0.05 + chance_by(5)));
}

TEST_CASE("What ends after today is not known yet") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P1", "S", 0, 29)};
  CHECK(find_surprises(clinic, known_law(), day(28)).units.empty());
  CHECK(find_surprises(clinic, known_law(), day(29)).units.size() == 1);
}

TEST_CASE("Each unit of a lot counts with the chance that it had to end early by now") {
  Clinic clinic = small_clinic();
  clinic.units = {of_lot("B", unit("P1", "S", 0, 40)),                      // early; full chance
                  of_lot("B", unit("P2", "S", 0, 200)),                     // worn out, not early
                  of_lot("B", unit("P3", "S", 0, 60, EndReason::resized)),  // could show 60 days
                  of_lot("B", unit("P4", "S", 270)),                        // 30 days so far
                  of_lot("B", unit("P5", "S", 260, 280)),  // early; 40 days possible
                  of_lot("B", unit("P6", "S", 300)),       // not worn yet
                  of_lot("other", unit("P1", "S", 40))};
  const auto found = find_surprises(clinic, known_law(), day(300));
  REQUIRE(found.lots.size() == 1);
  CHECK(found.lots_too_small == 1);
  const EarlyEndings& lot = found.lots[0];
  CHECK(lot.item.text == "S");
  CHECK(lot.lot == "B");
  CHECK(lot.units == 5);
  CHECK(lot.early == 2);
  CHECK(lot.early_patients == 2);
  std::vector<double> chances{0.1, 0.1, chance_by(60), chance_by(30), chance_by(40)};
  // The unit of the other lot, of the same kind, could show its full chance.
  const double expected = 0.3 + chances[2] + chances[3] + chances[4];
  for (double& chance : chances) chance = raised(chance, 2, expected);
  CHECK(lot.expected == Approx(std::accumulate(chances.begin(), chances.end(), 0.0)));
  CHECK(lot.p_value == Approx(chance_of_at_least(2, chances)));
  CHECK(lot.adjusted_p == Approx(lot.p_value));
  CHECK_FALSE(lot.flagged);  // two are too few, however unlikely
  REQUIRE(found.items.size() == 1);
  CHECK(found.items[0].units == 6);
  CHECK(found.items[0].lot.empty());
}

TEST_CASE("A hard user alone does not make a lot or an item look bad") {
  Clinic clinic = small_clinic();
  for (int i = 0; i < 6; ++i) {
    const std::string each = "P" + std::to_string(i);
    clinic.units.push_back(of_lot("A", unit("hard user", "S", 20 * i, 20 * i + 20)));
    clinic.units.push_back(of_lot("A", unit("another", "S", 20 * i, i == 0 ? 20 : 20 * i + 200)));
    clinic.units.push_back(of_lot("B", unit(each, "K", 20 * i, 20 * i + (i < 4 ? 20 : 200))));
  }
  const auto found = find_surprises(clinic, known_law(), day(900));
  REQUIRE(found.lots.size() == 2);
  const EarlyEndings& of_hard_user = found.lots[0];
  CHECK(of_hard_user.lot == "A");
  const double of_sleeves = raised(0.1, 7, 1.2);
  CHECK(of_hard_user.p_value == Approx(chance_of_at_least(7, std::vector(12, of_sleeves))));
  CHECK(of_hard_user.adjusted_p < 0.001);
  CHECK(of_hard_user.patients == 2);
  CHECK(of_hard_user.early_patients == 2);
  CHECK(of_hard_user.p_without_hardest_user == Approx(1 - std::pow(1 - of_sleeves, 6)));
  CHECK_FALSE(of_hard_user.flagged);
  const EarlyEndings& bad = found.lots[1];
  CHECK(bad.early == 4);
  CHECK(bad.patients == 6);
  CHECK(bad.p_without_hardest_user ==
        Approx(chance_of_at_least(3, std::vector(5, raised(0.1, 4, 0.6)))));
  CHECK(bad.flagged);
  CHECK(found.any_flagged());
}

TEST_CASE("The early endings of one patient are never enough") {
  Clinic clinic = small_clinic();
  for (int i = 0; i < 4; ++i) {
    // So young a lot that any ending is unlikely.
    clinic.units.push_back(of_lot("A", unit("P1", "S", 390, 391)));
    clinic.units.push_back(of_lot("B", unit(i < 3 ? "P2" : "P3", "S", 390, 391)));
  }
  const auto found = find_surprises(clinic, known_law(), day(395));
  REQUIRE(found.lots.size() == 2);
  for (const auto& lot : found.lots) {
    CHECK(lot.adjusted_p < 0.001);
    CHECK(lot.p_without_hardest_user < (lot.lot == "B" ? 0.01 : 1.1));
    CHECK(lot.flagged == (lot.lot == "B"));
  }
}

TEST_CASE("Units without a recorded lot are counted, and judged by their item alone") {
  Clinic clinic = small_clinic();
  for (int i = 0; i < 3; ++i) {
    clinic.units.push_back(unit("P" + std::to_string(i), "K", 0, 10));
  }
  const auto found = find_surprises(clinic, known_law(), day(400));
  CHECK(found.lots.empty());
  CHECK(found.units_without_lot == 3);
  REQUIRE(found.items.size() == 1);
  CHECK(found.items[0].flagged);
}

TEST_CASE("A clinic without units has no surprises") {
  const auto found = find_surprises(small_clinic(), known_law(), day(0));
  CHECK(found.units.empty());
  CHECK(found.lots.empty());
  CHECK_FALSE(found.any_flagged());
}

TEST_CASE("A lot that fails with everybody who has many of it is flagged") {
  Clinic clinic = small_clinic();
  for (int patient = 0; patient < 9; ++patient) {
    for (int i = 0; i < 6; ++i) {
      clinic.units.push_back(of_lot("bad", unit("P" + std::to_string(patient), "S", i, i + 20)));
      clinic.units.push_back(of_lot("good", unit("P" + std::to_string(patient), "S", i, i + 250)));
    }
  }
  ClinicLife law = known_law();
  for (auto& [kind, life] : law.kinds) life.theta = 0.5;
  const auto found = find_surprises(clinic, law, day(400));
  REQUIRE(found.lots.size() == 2);
  for (const EarlyEndings& lot : found.lots) CHECK(lot.flagged == (lot.lot == "bad"));
}

}  // namespace surprises_test
