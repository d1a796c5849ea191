#include <cmath>
#include <random>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "wear/clinic_fit.hpp"
#include "wear/small_clinic.hpp"
#include "wear/unit_life.hpp"

namespace recovery_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;

namespace {

constexpr double true_shape = 2.2;
constexpr FactorVector true_beta{0.15, 0.20, 0.05, -0.15, 0.25, 0.30};
constexpr int last_day = 1500;

double true_scale(Material material) {
  return material == Material::silicone ? 300 : 200;
}

class Simulation {
 public:
  Clinic clinic = small_clinic();

  void add_patient(int number) {
    const std::string ref = fmt::format("P{}", number);
    std::vector<std::pair<int, FactorVector>> factors;
    for (const int from : {0, whole(300, 700), whole(701, 1300)}) {
      const Usage stated = random_usage(ref, from);
      clinic.usage.push_back(stated);
      factors.emplace_back(from, updated_factors({}, stated));
    }
    // Some before the first record, which holds for them too; each issued when the last one ended.
    int day = whole(-200, 100);
    while (day < last_day) day = add_unit(ref, day, factors);
  }

 private:
  double uniform() { return static_cast<double>(random_()) / 2147483647.0; }
  int whole(int from, int to) { return from + static_cast<int>((to - from + 1) * uniform()); }

  Usage random_usage(const std::string& ref, int from) {
    Usage made = usage(ref, from);
    made.activity = static_cast<Activity>(whole(0, 4));
    made.kneeling_hours = 0.5 * whole(0, 8);
    made.wear_hours = whole(6, 16);
    made.sweating = static_cast<Sweating>(whole(0, 2));
    made.impact_sport = uniform() < 0.3;
    return made;
  }

  /// Ages the unit day by day until its life is used up; one in seven is lost at random before.
  int add_unit(const std::string& ref, int issued,
               const std::vector<std::pair<int, FactorVector>>& factors) {
    const bool silicone = uniform() < 0.6;
    const double life = true_scale(silicone ? Material::silicone : Material::mineral_oil_gel) *
                        std::pow(-std::log(uniform()), 1 / true_shape);
    const int lost = uniform() < 0.15 ? issued + whole(1, 200) : last_day + 1;
    double age = 0;
    double rate = 0;
    int day = issued;
    while (age < life && day < lost && day <= last_day) {
      rate = std::exp(log_wear_rate(factors[0].second, true_beta));
      for (const auto& [from, z] : factors) {
        if (from <= day) rate = std::exp(log_wear_rate(z, true_beta));
      }
      age += rate;
      ++day;
    }
    const bool worn = age >= life;
    if (worn && age - life > 0.5 * rate && day - 1 > issued) --day;  // to the nearest day
    clinic.units.push_back(
        unit(ref, silicone ? "L" : "G", issued, day, worn ? EndReason::tear : EndReason::lost));
    return day;
  }

  std::minstd_rand0 random_{4711};
};

}  // namespace

TEST_CASE("A known law is found again in simulated lives under changing usage") {
  Simulation simulation;
  for (int i = 0; i < 600; ++i) simulation.add_patient(i);
  const ClinicLife fitted =
      fit_clinic(simulation.clinic, plain_priors(), day_zero + days{last_day});
  const KindLife& liner = fitted.kinds.at(Kind::liner);
  REQUIRE(liner.converged);
  REQUIRE(liner.units > 3000);

  const auto within = [&](double estimate, double truth, Eigen::Index at) {
    const double error = std::sqrt(liner.covariance(at, at));
    CHECK(std::abs(estimate - truth) < 3.5 * error);
    CHECK(error < 0.08);
  };
  within(std::log(liner.shape), std::log(true_shape), 0);
  Eigen::Index at = 1;
  for (const auto& [material, scale] : liner.scale) {
    within(std::log(scale), std::log(true_scale(material)), at++);
  }
  for (std::size_t f = 0; f < factor_count; ++f) within(liner.beta[f], true_beta[f], at++);
}

}  // namespace recovery_test
