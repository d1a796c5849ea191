#include "wear/effects.hpp"

#include <cmath>
#include <random>

#include <doctest/doctest.h>

#include "wear/small_clinic.hpp"

namespace effects_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

namespace {

/// Two materials, so that the effects stand behind three other parameters in the covariance.
KindLife sleeve_life() {
  KindLife life;
  life.kind = Kind::sleeve;
  life.shape = 2;
  life.scale = {{Material::silicone, 300}, {Material::neoprene, 200}};
  life.beta = {-0.1, 0.35, 0.05, 0, 0, 0.1};
  const std::array<double, 9> errors{9, 9, 9, 0.05, 0.07, 0.02, 0.1, 0.1, 0.1};
  life.covariance = Eigen::MatrixXd::Zero(9, 9);
  for (Eigen::Index i = 0; i < 9; ++i) {
    life.covariance(i, i) = std::pow(errors[static_cast<std::size_t>(i)], 2);
  }
  return life;
}

const FactorEffect& effect_of(const std::vector<FactorEffect>& effects, Factor factor) {
  return effects[static_cast<std::size_t>(factor)];
}

/// Liners whose wear rate goes up by true_beta for every hour of kneeling.
constexpr double true_beta = 0.15;

Clinic kneeling_clinic(std::minstd_rand0& random) {
  const auto uniform = [&] { return static_cast<double>(random()) / 2147483647.0; };
  Clinic clinic = small_clinic();
  for (int i = 0; i < 60; ++i) {
    const std::string patient = "P" + std::to_string(i);
    Usage stated = usage(patient, 0);
    stated.kneeling_hours = 4 * uniform();
    clinic.usage.push_back(stated);
    for (int issued = static_cast<int>(100 * uniform()); issued < 700;) {
      const double life = 300 * std::sqrt(-std::log(uniform()));
      const double days_worn = life * std::exp(-true_beta * *stated.kneeling_hours);
      const int ended = issued + std::max(1, static_cast<int>(std::lround(days_worn)));
      clinic.units.push_back(unit(patient, "L", issued, ended));
      issued = ended;
    }
  }
  return clinic;
}

}  // namespace

TEST_CASE("An effect is exp(-beta * amount) with its 80 % interval") {
  const auto effects = factor_effects(sleeve_life(), plain_priors());
  REQUIRE(effects.size() == factor_count);
  // exp(-0.7), exp(-0.7 -+ 1.28155 * 0.14), and so on: reckoned by hand with Python's math.
  const auto& kneeling = effect_of(effects, Factor::kneeling_hours);
  CHECK(kneeling.amount == 2);
  CHECK(kneeling.ratio == Approx(0.4965853038));
  CHECK(kneeling.low == Approx(0.4150247097));
  CHECK(kneeling.high == Approx(0.5941741737));
  CHECK(kneeling.is_clear());
  const auto& hours = effect_of(effects, Factor::wear_hours);
  CHECK(hours.amount == 4);
  CHECK(hours.ratio == Approx(0.8187307531));
  CHECK(hours.low == Approx(0.7389506607));
  const auto& activity = effect_of(effects, Factor::activity);
  CHECK(activity.ratio == Approx(1.1051709181));
  CHECK(activity.low == Approx(1.0365754276));
  CHECK(activity.is_clear());
  const auto& sport = effect_of(effects, Factor::impact_sport);
  CHECK(sport.high == Approx(1.0285552591));
  CHECK_FALSE(sport.is_clear());
}

TEST_CASE("A median is the age at which half are worn out") {
  const KindLife life = sleeve_life();
  CHECK(median_days(life, Material::silicone) == Approx(300 * std::sqrt(std::log(2.0))));
  CHECK_THROWS_AS((void)median_days(life, Material::metal), std::out_of_range);
}

TEST_CASE("Without any history an effect is what was believed, with the belief's spread") {
  PriorTable priors = plain_priors(0.5, 0.3);
  for (auto& prior : priors.factors) prior.life_ratio = 0.8;
  const auto fitted = fit_clinic(small_clinic(), priors, day_zero);
  const auto effects = factor_effects(fitted.kinds.at(Kind::sleeve), priors);
  const auto& kneeling = effect_of(effects, Factor::kneeling_hours);
  CHECK(kneeling.prior_ratio == Approx(0.64));
  CHECK(kneeling.ratio == Approx(0.64).epsilon(1e-6));
  CHECK(kneeling.low == Approx(0.64 * std::exp(-1.2815515655 * 0.6)).epsilon(1e-6));
}

TEST_CASE("The 80 % interval holds the true effect in about 80 % of simulated clinics") {
  std::minstd_rand0 random{2026};
  const PriorTable priors = plain_priors(0.5, 1.0);
  const double truth = std::exp(-true_beta * 2);
  int held = 0;
  for (int i = 0; i < 200; ++i) {
    const auto fitted = fit_clinic(kneeling_clinic(random), priors, day_zero + days{700});
    const auto effects = factor_effects(fitted.kinds.at(Kind::liner), priors);
    const auto& kneeling = effect_of(effects, Factor::kneeling_hours);
    if (kneeling.low <= truth && truth <= kneeling.high) ++held;
  }
  MESSAGE("held the truth in " << held << " of 200 clinics");
  // Three standard errors of a binomial count either way.
  CHECK(held > 143);
  CHECK(held < 177);
}

}  // namespace effects_test
