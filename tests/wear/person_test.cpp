/// The personal multiplier from the records to the dates, on simulated clinics of locks.
#include <cmath>
#include <map>
#include <random>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "wear/clinic_fit.hpp"
#include "wear/small_clinic.hpp"
#include "wear/unit_life.hpp"

namespace person_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

namespace {

constexpr int today_at = 1200;
constexpr double true_shape = 2;
constexpr double true_scale = 200;

/// Patients wear locks one after another; each patient's hazard has a multiplier drawn from
/// Gamma(2, 2): variance 0.5.
class Simulation {
 public:
  Clinic clinic = small_clinic();
  std::vector<int> true_ends;  ///< of each unit, in days from day zero

  void add_patient(int number, int most_units) {
    const double z = -0.5 * (std::log(uniform()) + std::log(uniform()));
    int day = static_cast<int>(200 * uniform());
    for (int units = 0; day <= today_at && units < most_units; ++units) {
      const double life = true_scale * std::pow(-std::log(uniform()) / z, 1 / true_shape);
      const int end = day + std::max(1, static_cast<int>(std::lround(life)));
      clinic.units.push_back(unit(fmt::format("P{}", number), "K", day, end));
      true_ends.push_back(end);
      day = end;
    }
  }

 private:
  double uniform() { return static_cast<double>(random_()) / 2147483647.0; }
  std::minstd_rand0 random_{815};
};

KindLife fitted_lock(const ClinicLife& fitted) {
  return fitted.kinds.at(Kind::lock);
}

struct Coverage {
  double of_all = 0;
  double of_fast = 0;  ///< patients with ten endings or more
};

Coverage coverage(const Simulation& simulation, const PriorTable& priors) {
  const Date today = day_zero + days{today_at};
  const Clinic known = as_of(simulation.clinic, today);
  const ClinicLife fitted = fit_clinic(known, priors, today);
  REQUIRE(fitted_lock(fitted).converged);
  std::map<std::string, int> endings;
  for (const Unit& u : known.units) endings[u.patient.text] += u.ended_on ? 1 : 0;
  int all = 0, fast = 0, covered = 0, fast_covered = 0;
  for (const LifeOfUnit& each : lives_of_units_in_use(known, fitted, today)) {
    const Date end = day_zero + days{simulation.true_ends[each.unit]};
    const bool inside = end > each.life.worn_out_date(0.1) && end <= each.life.worn_out_date(0.9);
    const bool is_fast = endings[known.units[each.unit].patient.text] >= 10;
    ++all;
    covered += inside;
    fast += is_fast;
    fast_covered += is_fast && inside;
  }
  REQUIRE(fast > 100);
  return {static_cast<double>(covered) / all, static_cast<double>(fast_covered) / fast};
}

PriorTable without_multiplier() {
  return plain_priors(0.5, 0.2, 1e-6, 0.01);
}

ClinicLife known_lock(double theta) {
  KindLife life;
  life.kind = Kind::lock;
  life.shape = 2;
  life.scale[Material::metal] = 200;
  life.theta = theta;
  ClinicLife fitted;
  fitted.kinds[Kind::lock] = life;
  return fitted;
}

}  // namespace

TEST_CASE("A known variance of the multiplier is found again, and the shape with it") {
  Simulation simulation;
  for (int i = 0; i < 800; ++i) simulation.add_patient(i, 1000);
  const Date today = day_zero + days{today_at};
  const KindLife lock = fitted_lock(fit_clinic(simulation.clinic, plain_priors(), today));
  REQUIRE(lock.converged);
  const double error = std::sqrt(lock.covariance(8, 8));
  CHECK(error < 0.1);
  CHECK(std::abs(std::log(lock.theta / 0.5)) < 3.5 * error);
  CHECK(std::abs(std::log(lock.shape / true_shape)) < 3.5 * std::sqrt(lock.covariance(0, 0)));
  CHECK(std::abs(std::log(scale_days(lock, Material::metal) / true_scale)) <
        3.5 * std::sqrt(lock.covariance(1, 1)));
  const KindLife plain = fitted_lock(fit_clinic(simulation.clinic, without_multiplier(), today));
  CHECK(plain.shape < lock.shape);
}

TEST_CASE("Eight in ten lives end within their 80 % interval, which without multiplier fail") {
  Simulation simulation;
  for (int i = 0; i < 2000; ++i) simulation.add_patient(i, 1000);
  const Coverage with = coverage(simulation, plain_priors());
  const Coverage without = coverage(simulation, without_multiplier());
  MESSAGE(
      fmt::format("80 % intervals cover {:.3f}, of fast patients {:.3f}; without {:.3f}, {:.3f}",
                  with.of_all, with.of_fast, without.of_all, without.of_fast));
  // Four standard errors of a share of 2000 (0.036), and of the fast ones.
  CHECK(std::abs(with.of_all - 0.8) < 0.036);
  CHECK(std::abs(with.of_fast - 0.8) < 0.08);
  CHECK(std::abs(without.of_all - 0.8) > std::abs(with.of_all - 0.8));
  CHECK(std::abs(without.of_fast - 0.8) > 2 * std::abs(with.of_fast - 0.8));
}

TEST_CASE("History of a patient and kind is added up over all units, censored ones too") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("P", "K", 0, 50),   unit("P", "K", 50, 90, EndReason::lost),
                  unit("P", "K", 90, 150), unit("P", "S", 0, 10),
                  unit("Q", "K", 0, 10),   unit("P", "K", 150),
                  unit("P", "K", 200)};
  const auto lives = lives_of_units_in_use(clinic, known_lock(0.5), day_zero + days{180});
  REQUIRE(lives.size() == 1);
  const Multiplier& person = lives[0].life.person();
  CHECK(person.shape() == Approx(2 + 2));
  CHECK(person.rate() == Approx(2 + (50 * 50 + 40 * 40 + 60 * 60 + 30 * 30) / 40000.0));
}

TEST_CASE("Many early endings bring the dates forward, a long use puts them off") {
  Clinic clinic = small_clinic();
  for (int i = 0; i < 6; ++i) clinic.units.push_back(unit("fast", "K", 40 * i, 40 * (i + 1)));
  clinic.units.push_back(unit("fast", "K", 240));
  clinic.units.push_back(unit("new", "K", 240));
  clinic.units.push_back(unit("slow", "K", -800, 240, EndReason::lost));
  clinic.units.push_back(unit("slow", "K", 240));
  const auto lives = lives_of_units_in_use(clinic, known_lock(0.5), day_zero + days{240});
  REQUIRE(lives.size() == 3);
  for (const double p : standard_chances) {
    CHECK(*lives[0].life.worn_out_date(p) < *lives[1].life.worn_out_date(p));
    CHECK(*lives[1].life.worn_out_date(p) < *lives[2].life.worn_out_date(p));
  }
}

TEST_CASE("A patient without history gets the clinic's marginal life") {
  Clinic clinic = small_clinic();
  clinic.units = {unit("new", "K", 100)};
  const auto lives = lives_of_units_in_use(clinic, known_lock(0.5), day_zero + days{100});
  REQUIRE(lives.size() == 1);
  for (const double x : {10.0, 100.0, 400.0}) {
    const double hazard = std::pow(x / 200, 2);
    CHECK(lives[0].life.chance_at_wear(x) == Approx(1 - std::pow(1 + 0.5 * hazard, -2.0)));
  }
}

TEST_CASE("Histories that say little about the multiplier leave it near its prior") {
  const Date today = day_zero + days{today_at};
  const auto check = [&](const Clinic& clinic, double factor) {
    const KindLife lock = fitted_lock(fit_clinic(clinic, plain_priors(), today));
    CHECK(lock.converged);
    CHECK(lock.note == "");
    CHECK(lock.theta > 0.2 / factor);
    CHECK(lock.theta < 0.2 * factor);
  };
  Clinic clinic = small_clinic();
  SUBCASE("none") {
    check(clinic, 1.0001);
  }
  SUBCASE("one ending") {
    clinic.units = {unit("P", "K", 0, 150)};
    check(clinic, 1.2);
  }
  SUBCASE("all censored") {
    for (int i = 0; i < 500; ++i) clinic.units.push_back(unit(fmt::format("P{}", i), "K", 1100));
    check(clinic, 1.2);
  }
  SUBCASE("thousands of patients with one unit each") {
    Simulation simulation;
    for (int i = 0; i < 3000; ++i) simulation.add_patient(i, 1);
    check(simulation.clinic, 4);
  }
}

}  // namespace person_test
