#include <array>
#include <cmath>
#include <tuple>
#include <unordered_map>

#include "wear/exposure.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::wear {
namespace {

/// What the units of one kind tell of the patient who wears one today.
struct History {
  bool in_use = false;
  double endings = 0;
  double hazard = 0;  ///< cumulative, summed over the units
};

class Histories {
 public:
  void expect(const PatientRef& patient, Kind kind) {
    at(by_patient_[patient], kind).in_use = true;
  }

  /// Null unless it is expected.
  [[nodiscard]] History* find(const PatientRef& patient, Kind kind) {
    const auto found = by_patient_.find(patient);
    if (found == by_patient_.end()) return nullptr;
    History& history = at(found->second, kind);
    return history.in_use ? &history : nullptr;
  }

 private:
  using ByKind = std::array<History, 7>;
  static_assert(static_cast<std::size_t>(Kind::sock) + 1 == std::tuple_size_v<ByKind>);
  static History& at(ByKind& of_patient, Kind kind) {
    return of_patient[static_cast<std::size_t>(kind)];
  }

  std::unordered_map<PatientRef, ByKind> by_patient_;
};

std::vector<RateSpan> future_rates(const std::vector<UsageSpan>& usage, const FactorVector& beta,
                                   double share, Date today) {
  std::vector<RateSpan> rates;
  for (std::size_t i = span_on(usage, today); i < usage.size(); ++i) {
    const Date from = rates.empty() ? std::min(today, usage[i].from) : usage[i].from;
    rates.push_back({from, share * std::exp(log_wear_rate(usage[i].factors, beta))});
  }
  return rates;
}

Histories histories_of_units_in_use(const Clinic& clinic, const ClinicIndex& index, Date today) {
  Histories histories;
  for (const Unit& unit : clinic.units) {
    const Item* item = index.item(unit.item);
    if (item && unit.in_use_on(today)) histories.expect(unit.patient, item->kind);
  }
  return histories;
}

/// Adds to the histories what every unit has been through; wear ages by position in Clinic::units,
/// of the units whose history is wanted.
std::vector<double> add_wear(const Clinic& clinic, const ClinicIndex& index,
                             const Exposures& exposures, const ClinicLife& fitted, Date today,
                             Histories& histories) {
  std::vector<double> ages(clinic.units.size(), 0.0);
  for (std::size_t i = 0; i < clinic.units.size(); ++i) {
    const Unit& unit = clinic.units[i];
    const Item* item = index.item(unit.item);
    if (!item || unit.issued_on > today) continue;
    History* history = histories.find(unit.patient, item->kind);
    if (!history) continue;
    const Exposure exposure = exposures.of(unit, item->kind);
    if (exposure.spans.empty()) continue;  // never worn: says nothing about wear
    const KindLife& kind = fitted.kinds.at(item->kind);
    ages[i] = wear_age(exposure, kind.beta);
    history->hazard += std::pow(ages[i] / scale_days(kind, item->material), kind.shape);
    history->endings += exposure.worn_out ? 1 : 0;
  }
  return ages;
}

}  // namespace

std::vector<LifeOfUnit> lives_of_units_in_use(const Clinic& clinic, const ClinicLife& fitted,
                                              Date today) {
  const ClinicIndex index{clinic};
  const Exposures exposures{clinic, index, today};
  Histories histories = histories_of_units_in_use(clinic, index, today);
  const auto ages = add_wear(clinic, index, exposures, fitted, today, histories);
  std::vector<LifeOfUnit> lives;
  for (std::size_t i = 0; i < clinic.units.size(); ++i) {
    const Unit& unit = clinic.units[i];
    const Item* item = index.item(unit.item);
    if (!item || !unit.in_use_on(today)) continue;
    const KindLife& kind = fitted.kinds.at(item->kind);
    const History& history = *histories.find(unit.patient, item->kind);
    const double share = exposures.alternation().share_on(unit, item->kind, today);
    lives.push_back(
        {i,
         UnitLife{today, ages[i], kind.shape, scale_days(kind, item->material),
                  future_rates(exposures.usage().spans(unit.patient), kind.beta, share, today),
                  Multiplier::after(kind.theta, history.endings, history.hazard)},
         of_kind(fitted.others, item->kind)});
  }
  return lives;
}

}  // namespace sparewell::wear
