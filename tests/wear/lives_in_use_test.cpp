#include <cmath>

#include <doctest/doctest.h>

#include "wear/small_clinic.hpp"
#include "wear/unit_life.hpp"

namespace lives_in_use_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

namespace {

/// Every kind alike: shape 2, scale 300, an hour of kneeling a day wears a fifth faster.
ClinicLife known_life() {
  ClinicLife fitted;
  for (std::size_t k = 0; k < words<Kind>().size(); ++k) {
    KindLife life;
    life.kind = static_cast<Kind>(k);
    life.shape = 2;
    for (std::size_t m = 0; m < words<Material>().size(); ++m) {
      life.scale[static_cast<Material>(m)] = 300;
    }
    life.beta[1] = std::log(1.2);
    fitted.kinds[life.kind] = life;
  }
  return fitted;
}

Usage kneeling(int from, double hours) {
  Usage made = usage("P", from);
  made.kneeling_hours = hours;
  return made;
}

}  // namespace

TEST_CASE("Units in use today are told with their wear so far, and no others") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 0, 50), unit("P", "K", 10),      unit("P", "X", 10),
                  unit("P", "K", 101),   unit("P", "K", 20, 100), unit("P", "K", 20, 101)};
  const auto lives = lives_of_units_in_use(clinic, known_life(), day_zero + days{100});
  REQUIRE(lives.size() == 2);
  CHECK(lives[0].unit == 1);
  CHECK(lives[0].life.wear_age_days() == Approx(90));
  CHECK(lives[0].life.today() == day_zero + days{100});
  CHECK(lives[1].unit == 5);
  CHECK(lives[1].life.wear_age_days() == Approx(80));
}

TEST_CASE("Usage known for later dates applies from then on") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 0)};
  clinic.usage = {kneeling(0, 0), kneeling(50, 1), kneeling(120, 2), kneeling(150, 0)};
  const auto lives = lives_of_units_in_use(clinic, known_life(), day_zero + days{100});
  REQUIRE(lives.size() == 1);
  const UnitLife& life = lives[0].life;
  // By hand: 50 days at 1 and 50 at 1.2; then 20 at 1.2, 30 at 1.44, then at 1.
  CHECK(life.wear_age_days() == Approx(50 + 60));
  CHECK(life.wear_until(day_zero + days{160}) == Approx(20 * 1.2 + 30 * 1.44 + 10));
}

TEST_CASE("When the first record lies ahead its values hold today too") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 0)};
  clinic.usage = {kneeling(120, 1)};
  const auto lives = lives_of_units_in_use(clinic, known_life(), day_zero + days{100});
  REQUIRE(lives.size() == 1);
  CHECK(lives[0].life.wear_age_days() == Approx(120));
  CHECK(lives[0].life.wear_until(day_zero + days{150}) == Approx(60));
}

TEST_CASE("Liners that alternate today go on alternating, and one in the drawer does not age") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "L", 0), unit("P", "G", 50), unit("P", "L", 0)};
  clinic.units[2].share = 0;
  const auto lives = lives_of_units_in_use(clinic, known_life(), day_zero + days{100});
  REQUIRE(lives.size() == 3);
  CHECK(lives[0].life.wear_age_days() == Approx(50 + 25));
  CHECK(lives[1].life.wear_age_days() == Approx(25));
  CHECK(lives[0].life.wear_until(day_zero + days{120}) == Approx(10));
  CHECK(lives[2].life.wear_age_days() == 0);
  CHECK_FALSE(lives[2].life.worn_out_date(0.05).has_value());
}

TEST_CASE("A unit issued today is new, and its worn-out date is that of a new one") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 100)};
  const auto lives = lives_of_units_in_use(clinic, known_life(), day_zero + days{100});
  REQUIRE(lives.size() == 1);
  CHECK(lives[0].life.wear_age_days() == 0);
  CHECK(lives[0].life.worn_out_date(0.5) == day_zero + days{100 + 250});
}

TEST_CASE("What the law leaves open about all units of an item is their hazard's common spread") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 0), unit("Q", "K", 40)};
  ClinicLife fitted = known_life();
  const Eigen::ArrayXd drawn = standard_draws(1).row(0).transpose().array();
  for (auto& [kind, life] : fitted.kinds) {
    life.draws.shape = Eigen::ArrayXd::Constant(law_draws, 2);
    life.draws.beta = Eigen::ArrayXXd::Zero(law_draws, static_cast<Eigen::Index>(factor_count));
    life.draws.theta = Eigen::ArrayXd::Zero(law_draws);
    life.draws.log_scale = (std::log(300) + 0.1 * drawn).replicate(1, std::ssize(life.scale));
  }
  const auto lives = lives_of_units_in_use(clinic, fitted, day_zero + days{100});
  REQUIRE(lives.size() == 2);
  // The hazard goes with scale^-2, and the draws have a standard deviation of exactly 1.
  CHECK(lives[0].law_spread == Approx(0.2).epsilon(1e-6));
  CHECK(lives[1].law_spread == Approx(0.2).epsilon(1e-6));
  for (auto& [kind, life] : fitted.kinds) life.draws = {};
  CHECK(lives_of_units_in_use(clinic, fitted, day_zero + days{100})[0].law_spread == 0);
}

}  // namespace lives_in_use_test
