/// Histories that say too little, or too much of one kind, to be fitted: what comes out is finite,
/// and where it is not sound it says so.
#include <cmath>
#include <functional>
#include <random>

#include <Eigen/Eigenvalues>
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "wear/clinic_fit.hpp"
#include "wear/small_clinic.hpp"

namespace odd_histories_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;
using doctest::Approx;

namespace {

class Random {
 public:
  double uniform() { return static_cast<double>(random_()) / 2147483647.0; }
  int days(double scale, double shape) {
    return 1 + static_cast<int>(scale * std::pow(-std::log(uniform()), 1 / shape));
  }

 private:
  std::minstd_rand0 random_{41};
};

Clinic clinic_of(int units, const std::function<void(Clinic&, int)>& add) {
  Clinic clinic = small_clinic();
  for (int i = 0; i < units; ++i) add(clinic, i);
  return clinic;
}

std::string patient(int number) {
  return fmt::format("P{}", number);
}

Usage with_sport(int number, bool sport) {
  Usage stated = usage(patient(number), 0);
  stated.impact_sport = sport;
  return stated;
}

/// The widest beliefs that a table of priors may hold.
PriorTable nearly_flat() {
  return plain_priors(10, 10, 0.2, 10);
}
PriorTable nearly_flat_without_multiplier() {
  return plain_priors(10, 10, 1e-6, 0.01);
}
const std::vector<PriorTable>& all_priors() {
  static const std::vector<PriorTable> all{plain_priors(), nearly_flat(),
                                           nearly_flat_without_multiplier(), PriorTable{}};
  return all;
}

void check_finite(const KindLife& life) {
  CHECK((life.shape > 0 && life.shape < 51));
  CHECK((life.theta > 0 && std::isfinite(life.theta)));
  for (const auto& [material, scale] : life.scale) CHECK((scale > 0 && std::isfinite(scale)));
  for (const auto& [item, scale] : life.item_scale) CHECK((scale > 0 && std::isfinite(scale)));
  for (const double beta : life.beta) CHECK(std::isfinite(beta));
  REQUIRE(life.covariance.allFinite());
  CHECK(Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>{life.covariance}.eigenvalues()[0] > 0);
  CHECK(life.draws.shape.allFinite());
  CHECK(life.draws.log_scale.allFinite());
  CHECK(life.draws.beta.allFinite());
  CHECK(life.draws.theta.allFinite());
}

/// Ends with a full stop and holds no other: one sentence.
void check_note(const KindLife& life) {
  CAPTURE(life.note);
  CHECK(life.converged == life.note.empty());
  if (!life.note.empty()) CHECK(life.note.find('.') == life.note.size() - 1);
}

KindLife fitted(const Clinic& clinic, const PriorTable& priors, int today = 9000,
                Kind kind = Kind::lock) {
  KindLife life = fit_clinic(clinic, priors, day_zero + days{today}).kinds.at(kind);
  check_finite(life);
  check_note(life);
  return life;
}

bool says(const KindLife& life, const std::string& words) {
  return life.note.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("No history of any size or shape gives a number that is none, whatever the priors") {
  Random random;
  const std::vector<std::function<void(Clinic&, int)>> histories{
      [](Clinic& clinic, int i) { clinic.units.push_back(unit(patient(i), "K", 0)); },
      [](Clinic& clinic, int i) {
        clinic.units.push_back(i == 0 ? unit(patient(i), "K", 0, 100) : unit(patient(i), "K", 0));
      },
      [](Clinic& clinic, int i) {
        clinic.usage.push_back(with_sport(i, i % 2 == 1));
        clinic.units.push_back(i % 2 ? unit(patient(i), "K", 0, 0) : unit(patient(i), "K", 0));
      },
      [&](Clinic& clinic, int i) {
        clinic.usage.push_back(with_sport(i, i % 2 == 1));
        clinic.units.push_back(i % 2 ? unit(patient(i), "K", 0, random.days(100, 2))
                                     : unit(patient(i), "K", 0));
      },
      [](Clinic& clinic, int i) {
        clinic.usage.push_back(with_sport(i, i % 2 == 1));
        clinic.units.push_back(unit(patient(i), "K", 0, i % 2 ? 0 : 36500));
      },
      [](Clinic& clinic, int i) {
        Usage stated = usage(patient(i), 0);
        stated.kneeling_hours = 12.0 / (1 + i);
        clinic.usage.push_back(stated);
        clinic.units.push_back(unit(patient(i), "K", 0, 10 + i));
      },
      [](Clinic& clinic, int i) {
        clinic.units.push_back(unit(patient(i / 5), "K", 0, (i / 5) % 2 ? 0 : 36500));
      },
      [&](Clinic& clinic, int i) {
        clinic.units.push_back(i % 10 ? unit(patient(i), "K", 0)
                                      : unit("one", "K", 0, random.days(50, 2)));
      },
      [&](Clinic& clinic, int i) {
        clinic.units.push_back(unit(patient(i), "K", 0, random.days(200, 2)));
      },
      [](Clinic& clinic, int i) {
        clinic.settings.records_begin = day_zero + days{1000};
        clinic.units.push_back(unit(patient(i), "K", 0, 1000));
      }};
  for (std::size_t h = 0; h < histories.size(); ++h) {
    for (const int units : {0, 1, 2, 10, 300, 3000}) {
      for (std::size_t p = 0; p < all_priors().size(); ++p) {
        CAPTURE(h);
        CAPTURE(units);
        CAPTURE(p);
        static_cast<void>(fitted(clinic_of(units, histories[h]), all_priors()[p], 40000));
      }
    }
  }
}

TEST_CASE("Sport that all worn-out locks have and none of the others is told, not believed") {
  Random random;
  const Clinic clinic = clinic_of(300, [&](Clinic& made, int i) {
    made.usage.push_back(with_sport(i, i % 2 == 1));
    made.units.push_back(i % 2 ? unit(patient(i), "K", 0, random.days(100, 2))
                               : unit(patient(i), "K", 0));
  });
  for (const PriorTable& priors : {nearly_flat(), nearly_flat_without_multiplier()}) {
    const KindLife lock = fitted(clinic, priors);
    CHECK(says(lock, "impact sport separates the locks"));
  }
  // A belief that small effects are likelier holds it.
  CHECK(fitted(clinic, plain_priors()).beta[5] < std::log(20));
}

TEST_CASE("Locks that all wore out at once with sport have no spread to learn") {
  const Clinic clinic = clinic_of(300, [](Clinic& made, int i) {
    made.usage.push_back(with_sport(i, i % 2 == 1));
    made.units.push_back(i % 2 ? unit(patient(i), "K", 0, 1) : unit(patient(i), "K", 0));
  });
  CHECK(says(fitted(clinic, nearly_flat()), "held at 50"));
  CHECK(says(fitted(clinic, nearly_flat_without_multiplier()), "held at 50"));
}

TEST_CASE("Endings that only one patient has are told, not taken for how patients differ") {
  Random random;
  const Clinic clinic = clinic_of(3000, [&](Clinic& made, int i) {
    made.units.push_back(i % 10 ? unit(patient(i), "K", 0)
                                : unit("one", "K", 0, random.days(50, 2)));
  });
  CHECK(says(fitted(clinic, plain_priors(), 600), "recorded for all of them"));
  CHECK(says(fitted(clinic, nearly_flat(), 600), "recorded for all of them"));
  CHECK(says(fitted(clinic, nearly_flat_without_multiplier(), 600), "check whether endings"));
}

TEST_CASE("One ending among thousands of long lives says that it is not enough") {
  const Clinic clinic = clinic_of(3000, [](Clinic& made, int i) {
    made.units.push_back(i == 0 ? unit(patient(i), "K", 0, 100) : unit(patient(i), "K", 0));
  });
  CHECK(says(fitted(clinic, nearly_flat(), 600), "So few locks wore out"));
  const KindLife believed = fitted(clinic, plain_priors(), 600);
  CHECK(believed.converged);
  CHECK(believed.item_scale.at({"K"}) > 1000);
}

TEST_CASE("Factors that are the same for everyone move no further than the belief lets them") {
  Random random;
  const Clinic clinic = clinic_of(1000, [&](Clinic& made, int i) {
    Usage stated = usage(patient(i), 0);
    stated.kneeling_hours = 5;
    stated.impact_sport = true;
    made.usage.push_back(stated);
    made.units.push_back(unit(patient(i), "K", 0, random.days(100, 2)));
  });
  for (const PriorTable& priors : all_priors()) {
    const KindLife lock = fitted(clinic, priors);
    CHECK(lock.converged);
    // Only their sum with the log scale is known.
    const double log_scale = std::log(lock.item_scale.at({"K"})) - 5 * lock.beta[1] - lock.beta[5];
    CHECK(log_scale == Approx(std::log(100)).epsilon(0.03));
  }
}

TEST_CASE("Patients who do not differ let the search come to an end, at a small variance") {
  Random random;
  for (const int units_each : {1, 5}) {
    const Clinic clinic = clinic_of(4000, [&](Clinic& made, int i) {
      made.units.push_back(unit(patient(i / units_each), "K", 0, random.days(200, 2)));
    });
    for (const PriorTable& priors : all_priors()) {
      const KindLife lock = fitted(clinic, priors);
      CHECK(lock.converged);
      CHECK(lock.theta < 0.12);
      CHECK(lock.shape == Approx(2).epsilon(0.1));
    }
  }
}

TEST_CASE("Patients of very many like lives and very different ones are still computed") {
  // Half have locks that last a day, half a century: hazards beyond 1e160 for the shape that fits.
  const Clinic clinic = clinic_of(400, [](Clinic& made, int i) {
    const bool short_lived = (i / 5) % 2 == 1;
    made.units.push_back(
        unit(patient(i / 5), "K", 0, short_lived ? 10 + i % 5 : 30000 + 3000 * (i % 5)));
  });
  const KindLife lock = fitted(clinic, nearly_flat(), 60000);
  CHECK(lock.shape > 4);
  CHECK(says(lock, "recorded for all of them"));
}

}  // namespace odd_histories_test
