/// Items of one material that last differently.
#include <cmath>
#include <random>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "wear/clinic_fit.hpp"
#include "wear/small_clinic.hpp"
#include "wear/unit_life.hpp"

namespace item_scale_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

namespace {

constexpr int last_day = 1500;
const Date today = day_zero + days{last_day};

struct Made {
  Clinic clinic;
  std::vector<double> scales;
};

/// Patients wear locks one after another, each of an item drawn anew from twelve whose scales are
/// 250 times exp(spread * normal).
Made locks(int patients, double spread, unsigned seed) {
  Made made{small_clinic(), {}};
  std::minstd_rand0 random{seed};
  const auto uniform = [&] { return static_cast<double>(random()) / 2147483647.0; };
  for (int i = 0; i < 12; ++i) {
    made.clinic.items.push_back(item(fmt::format("K{}", i), Kind::lock, Material::metal));
    double normal = -6;
    for (int n = 0; n < 12; ++n) normal += uniform();
    made.scales.push_back(250 * std::exp(spread * normal));
  }
  for (int i = 0; i < patients; ++i) {
    int day = static_cast<int>(300 * uniform());
    while (day < last_day) {
      const auto which = static_cast<std::size_t>(12 * uniform());
      const int end =
          day + 1 + static_cast<int>(made.scales[which] * std::sqrt(-std::log(uniform())));
      made.clinic.units.push_back(unit(fmt::format("P{}", i), fmt::format("K{}", which), day, end));
      day = end;
    }
  }
  return made;
}

}  // namespace

TEST_CASE("Scales of items and their spread are found again") {
  const Made made = locks(300, 0.3, 99);
  const KindLife lock = fit_clinic(made.clinic, plain_priors(), today).kinds.at(Kind::lock);
  REQUIRE(lock.converged);
  REQUIRE(lock.item_scale.size() == 12);
  // The standard deviation of twelve draws is known within about a fifth.
  CHECK(lock.item_spread > 0.15);
  CHECK(lock.item_spread < 0.5);
  for (std::size_t i = 0; i < 12; ++i) {
    const double fitted = lock.item_scale.at({fmt::format("K{}", i)});
    CHECK(std::abs(std::log(fitted / made.scales[i])) < 0.25);  // about 110 lives each
  }
}

TEST_CASE("Items that do not differ shrink to their material") {
  const Made made = locks(300, 0, 7);
  const KindLife lock = fit_clinic(made.clinic, plain_priors(), today).kinds.at(Kind::lock);
  CHECK(lock.item_spread < 0.06);
  for (const auto& [code, scale] : lock.item_scale) {
    CHECK(std::abs(std::log(scale / scale_days(lock, Material::metal))) < 0.08);
  }
}

TEST_CASE("An item never worn is as its material, and less certain than one that was") {
  const Made made = locks(100, 0.3, 5);
  const KindLife lock = fit_clinic(made.clinic, plain_priors(), today).kinds.at(Kind::lock);
  const Item unworn = item("new", Kind::lock, Material::metal);
  CHECK(scale_days(lock, unworn) == scale_days(lock, Material::metal));
  const auto spread_of = [&](const Item& one) {
    const Eigen::ArrayXd logs = lock.draws.log_scale.col(scale_column(lock, one));
    return std::sqrt((logs - logs.mean()).square().mean());
  };
  CHECK(spread_of(unworn) > 0.8 * lock.item_spread);
  CHECK(spread_of(made.clinic.items.back()) < spread_of(unworn));
}

TEST_CASE("The draws have the mean and the spread of the posterior") {
  const Made made = locks(60, 0.2, 3);
  const KindLife lock = fit_clinic(made.clinic, plain_priors(), today).kinds.at(Kind::lock);
  const auto check = [&](const Eigen::ArrayXd& logs, double mean, double variance) {
    CHECK(logs.mean() == Approx(mean));
    CHECK((logs - logs.mean()).square().mean() == Approx(variance));
  };
  check(lock.draws.shape.log(), std::log(lock.shape), lock.covariance(0, 0));
  check(lock.draws.theta.log(), std::log(lock.theta), lock.covariance(8, 8));
  for (Eigen::Index f = 0; f < 6; ++f) {
    check(lock.draws.beta.col(f), lock.beta[static_cast<std::size_t>(f)],
          lock.covariance(2 + f, 2 + f));
  }
}

}  // namespace item_scale_test
