#include "wear/clinic_fit.hpp"

#include <cmath>
#include <numbers>
#include <random>

#include <Eigen/Eigenvalues>
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "wear/small_clinic.hpp"
#include "wear/weibull_regression.hpp"

namespace clinic_fit_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

namespace {

double median(const KindLife& life, Material material) {
  return scale_days(life, material) * std::pow(std::numbers::ln2, 1 / life.shape);
}

void check_finite(const ClinicLife& fitted) {
  REQUIRE(fitted.kinds.size() == words<Kind>().size());
  for (const auto& [kind, life] : fitted.kinds) {
    CAPTURE(word(kind));
    CHECK(life.kind == kind);
    CHECK(std::isfinite(life.shape));
    CHECK(life.shape > 0);
    CHECK_FALSE(life.scale.empty());
    for (const auto& [material, scale] : life.scale) CHECK((scale > 0 && std::isfinite(scale)));
    for (const double beta : life.beta) CHECK(std::isfinite(beta));
    CHECK(life.covariance.rows() ==
          static_cast<Eigen::Index>(2 + life.scale.size() + factor_count));
    CHECK((life.theta > 0 && std::isfinite(life.theta)));
    CHECK(life.covariance.allFinite());
    CHECK(Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>{life.covariance}.eigenvalues()[0] > 0);
  }
}

void check_sensible(const ClinicLife& fitted) {
  check_finite(fitted);
  for (const auto& [kind, life] : fitted.kinds) {
    CAPTURE(word(kind));
    CHECK(life.converged);
    CHECK(life.note == "");
  }
}

Date after(int day) {
  return day_zero + days{day};
}

/// Locks of patients whose usage never changes, with two factors at play.
Clinic constant_usage_clinic(int patients) {
  Clinic clinic = small_clinic();
  std::minstd_rand0 random{11};
  const auto next = [&] { return static_cast<double>(random()) / 2147483647.0; };
  for (int i = 0; i < patients; ++i) {
    const std::string ref = fmt::format("P{}", i);
    Usage stated = usage(ref, 0);
    stated.kneeling_hours = std::floor(4 * next());
    stated.impact_sport = next() < 0.3;
    clinic.usage.push_back(stated);
    const double life =
        400 * std::exp(-0.1 * *stated.kneeling_hours) * std::pow(-std::log(next()), 1 / 1.8);
    clinic.units.push_back(unit(ref, "K", 0, 1 + static_cast<int>(life),
                                next() < 0.8 ? EndReason::leak : EndReason::lost));
  }
  return clinic;
}

LifeTable lives_of(const Clinic& clinic) {
  LifeTable table;
  const auto n = static_cast<Eigen::Index>(clinic.units.size());
  table.time.resize(n);
  table.covariates.resize(n, 2);
  table.covariate_names = {"kneeling", "sport"};
  for (Eigen::Index i = 0; i < n; ++i) {
    const auto at = static_cast<std::size_t>(i);
    const Unit& lock = clinic.units[at];
    table.time[i] = days_between(lock.issued_on, *lock.ended_on);
    table.event.push_back(is_wear(*lock.end_reason));
    table.covariates(i, 0) = *clinic.usage[at].kneeling_hours;
    table.covariates(i, 1) = *clinic.usage[at].impact_sport ? 1 : 0;
  }
  return table;
}

}  // namespace

TEST_CASE("Without history the fit is the prior") {
  const ClinicLife fitted = fit_clinic(small_clinic(), plain_priors(), after(0));
  check_sensible(fitted);
  for (const auto& [kind, life] : fitted.kinds) {
    CHECK(life.shape == Approx(2));
    CHECK(life.units == 0);
    for (const auto& [material, scale] : life.scale) CHECK(median(life, material) == Approx(250));
    for (const double beta : life.beta) CHECK(std::abs(beta) < 1e-9);
  }
  const KindLife& liner = fitted.kinds.at(Kind::liner);
  CHECK(liner.scale.size() == 2);
  CHECK(liner.theta == Approx(0.2));
  CHECK(liner.covariance(0, 0) == Approx(0.25));       // spread of log shape squared
  CHECK(liner.covariance(3, 3) == Approx(0.2 * 0.2));  // spread of beta squared
}

TEST_CASE(
    "With flat priors, constant usage and no personal multiplier the fit is the plain Weibull "
    "regression") {
  const Clinic clinic = constant_usage_clinic(400);
  const auto plain = fit_weibull_life(lives_of(clinic));
  REQUIRE(plain.has_value());
  PriorTable flat = plain_priors(10, 10, 1e-6, 0.01);
  // A spread of 10 is the widest a table may have: it moves the estimates by less than 1e-4 of
  // their errors.
  const ClinicLife fitted = fit_clinic(clinic, flat, after(9000));
  const KindLife& lock = fitted.kinds.at(Kind::lock);
  CHECK(lock.converged);
  CHECK(lock.units == 400);
  CHECK(lock.wear_endings == plain->events);
  CHECK(std::abs(std::log(lock.shape / plain->shape)) < 1e-3 * plain->log_scale_error);
  CHECK(std::abs(std::log(lock.item_scale.at({"K"}) / plain->scale)) <
        1e-3 * plain->intercept_error);
  CHECK(std::abs(lock.beta[1] + plain->coefficients[0]) < 1e-3 * plain->coefficient_errors[0]);
  CHECK(std::abs(lock.beta[5] + plain->coefficients[1]) < 1e-3 * plain->coefficient_errors[1]);
  CHECK(std::sqrt(lock.covariance(0, 0)) == Approx(plain->log_scale_error).epsilon(1e-3));
  CHECK(std::sqrt(lock.covariance(3, 3)) == Approx(plain->coefficient_errors[0]).epsilon(1e-3));
}

TEST_CASE("History overtakes the prior as it grows") {
  double before = 0;
  for (const int patients : {0, 30, 300}) {
    const ClinicLife fitted =
        fit_clinic(constant_usage_clinic(patients), plain_priors(), after(9000));
    check_sensible(fitted);
    const double variance = fitted.kinds.at(Kind::lock).covariance(1, 1);
    if (before > 0) CHECK(variance < before);
    before = variance;
  }
}

TEST_CASE("A material without history keeps the median of its prior") {
  Clinic clinic = small_clinic();
  for (int i = 0; i < 50; ++i) {
    clinic.units.push_back(unit(fmt::format("P{}", i), "L", 0, 60 + i));
  }
  PriorTable priors = plain_priors();
  priors.lives.push_back({Kind::liner, Material::urethane, 400, 0.5, 2, 0.5, "for a test"});
  const KindLife liner = fit_clinic(clinic, priors, after(500)).kinds.at(Kind::liner);
  CHECK(median(liner, Material::urethane) == Approx(400));
  CHECK(median(liner, Material::mineral_oil_gel) == Approx(250));
  CHECK(median(liner, Material::silicone) < 120);
}

TEST_CASE("Lives that have not ended lengthen the belief, never shorten it") {
  Clinic clinic = small_clinic();
  for (int i = 0; i < 20; ++i) clinic.units.push_back(unit(fmt::format("P{}", i), "K", 0));
  const ClinicLife fitted = fit_clinic(clinic, plain_priors(), after(600));
  check_sensible(fitted);
  CHECK(fitted.kinds.at(Kind::lock).wear_endings == 0);
  CHECK(median(fitted.kinds.at(Kind::lock), Material::metal) > 600);
}

TEST_CASE("Few, extreme and odd histories give finite lives") {
  const auto fitted_with = [](std::vector<Unit> units, int today) {
    Clinic clinic = small_clinic();
    clinic.units = std::move(units);
    Usage odd = usage("P", 0);
    odd.kneeling_hours = 24;
    odd.wear_hours = 24;
    odd.activity = Activity::k4;
    clinic.usage = {odd};
    return fit_clinic(clinic, plain_priors(), after(today));
  };
  SUBCASE("one wear ending") {
    check_sensible(fitted_with({unit("P", "K", 0, 100)}, 200));
  }
  SUBCASE("a life of zero days") {
    check_sensible(fitted_with({unit("P", "K", 0, 0)}, 200));
  }
  SUBCASE("a life of two hundred years") {
    check_sensible(fitted_with({unit("P", "K", 0, 73000)}, 80000));
    check_sensible(fitted_with({unit("P", "K", 0)}, 80000));
  }
  SUBCASE("many lives of zero days and many of a century") {
    std::vector<Unit> units(200, unit("P", "K", 0, 0));
    units.resize(400, unit("P", "K", 0, 36500));
    check_sensible(fitted_with(units, 40000));
  }
  SUBCASE("all lives alike") {
    const ClinicLife fitted = fitted_with(std::vector<Unit>(2000, unit("P", "K", 0, 100)), 40000);
    check_finite(fitted);
    const KindLife& lock = fitted.kinds.at(Kind::lock);
    CHECK_FALSE(lock.converged);
    CHECK(lock.note.find("held at 50") != std::string::npos);
    CHECK(lock.shape == Approx(50).epsilon(1e-3));
  }
  SUBCASE("only units in the drawer") {
    Unit spare = unit("P", "L", 0);
    spare.share = 0;
    const ClinicLife fitted = fitted_with({spare}, 200);
    check_sensible(fitted);
    CHECK(fitted.kinds.at(Kind::liner).units == 0);
  }
  SUBCASE("an ending before the issue") {
    check_sensible(fitted_with({unit("P", "K", 50, 20)}, 200));
  }
  SUBCASE("an unknown item") {
    check_sensible(fitted_with({unit("P", "X", 0, 20)}, 200));
  }
}

TEST_CASE("Nothing after the day is used, whether or not it was taken out before") {
  Clinic clinic = constant_usage_clinic(60);
  const KindLife with = fit_clinic(clinic, plain_priors(), after(200)).kinds.at(Kind::lock);
  const KindLife without =
      fit_clinic(as_of(clinic, after(200)), plain_priors(), after(200)).kinds.at(Kind::lock);
  CHECK(with.shape == without.shape);
  CHECK(with.scale == without.scale);
  CHECK(with.wear_endings == without.wear_endings);
  CHECK(with.wear_endings < 60);
}

TEST_CASE("A clinic without any priors still gets finite lives") {
  check_sensible(fit_clinic(constant_usage_clinic(5), PriorTable{}, after(500)));
}

TEST_CASE("A prior that is not sane is not computed with") {
  PriorTable priors = plain_priors();
  priors.lives[0].median_spread = 0;
  CHECK_THROWS_AS(static_cast<void>(fit_clinic(small_clinic(), priors, after(0))),
                  std::invalid_argument);
}

}  // namespace clinic_fit_test
