#include "wear/surprises.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <tuple>

#include "wear/effects.hpp"
#include "wear/exposure.hpp"
#include "wear/false_discovery.hpp"

namespace sparewell::wear {
namespace {

/// The units of one patient in a lot or an item.
struct PatientShare {
  double chance_of_none = 1;  // of an early ending, were the units independent
  bool early = false;
};

/// What the tests need to know about the units of a lot or an item.
struct Group {
  std::vector<double> chances;  // to have ended early by now, one a unit
  int early = 0;
  std::map<PatientRef, PatientShare> patients;
};

/// The lot is "" in the groups by item.
using GroupKey = std::pair<ItemCode, std::string>;
using Groups = std::map<GroupKey, Group>;

/// A unit under the law of its kind and material.
struct Outcome {
  double wear_age = 0;
  double median = 0;
  double chance = 0;            // to wear out by that age
  double reachable_chance = 0;  // to wear out by the age it could have reached by today
  bool worn_out = false;
};

/// Given that it lasted to the age at which it entered the records.
double chance_worn_by_age(const KindLife& life, double scale, double age, double entry_age) {
  if (!(age > entry_age)) return 0;
  return -std::expm1(std::pow(entry_age / scale, life.shape) - std::pow(age / scale, life.shape));
}

/// Wear from the unit's end to today, had it gone on as before.
double wear_not_lived(const Exposures& exposures, const Unit& unit, const KindLife& life) {
  const Date last_day = std::max(unit.issued_on, *unit.ended_on - days{1});
  Unit going_on = unit;
  going_on.share = exposures.alternation().share_on(unit, life.kind, last_day);
  going_on.issued_on = std::max(unit.issued_on, *unit.ended_on);
  going_on.ended_on.reset();
  going_on.end_reason.reset();
  return wear_age(exposures.of(going_on, life.kind).spans, life.beta);
}

Outcome outcome_of(const Exposures& exposures, const Unit& unit, const KindLife& life,
                   Material material) {
  const double scale = scale_days(life, material);
  const Exposure exposure = exposures.of(unit, life.kind);
  Outcome outcome;
  outcome.worn_out = exposure.worn_out;
  outcome.wear_age = wear_age(exposure.spans, life.beta);
  const double entry = wear_age(exposure.before_entry, life.beta);
  outcome.median = median_days(life, material);
  outcome.chance = chance_worn_by_age(life, scale, outcome.wear_age, entry);
  const double missed = outcome.worn_out ? wear_not_lived(exposures, unit, life) : 0;
  outcome.reachable_chance = chance_worn_by_age(life, scale, outcome.wear_age + missed, entry);
  return outcome;
}

void add_to(Group& group, const Unit& unit, const Outcome& outcome) {
  const double chance = std::min(early_chance, outcome.reachable_chance);
  const bool early = outcome.worn_out && outcome.chance < early_chance;
  group.chances.push_back(chance);
  group.early += early ? 1 : 0;
  PatientShare& patient = group.patients[unit.patient];
  patient.chance_of_none *= 1 - chance;
  patient.early = patient.early || early;
}

EarlyEndings tested(const GroupKey& key, const Group& group) {
  EarlyEndings made;
  std::tie(made.item, made.lot) = key;
  made.units = static_cast<int>(group.chances.size());
  made.early = group.early;
  made.expected = std::accumulate(group.chances.begin(), group.chances.end(), 0.0);
  made.p_value = chance_of_at_least(group.early, group.chances);
  std::vector<double> chances;
  for (const auto& [ref, patient] : group.patients) {
    chances.push_back(1 - patient.chance_of_none);
    made.early_patients += patient.early ? 1 : 0;
  }
  made.patients = static_cast<int>(chances.size());
  made.patients_p = chance_of_at_least(made.early_patients, chances);
  return made;
}

using Value = double EarlyEndings::*;

void adjust(std::vector<EarlyEndings>& all, Value p_value, Value adjusted) {
  std::vector<double> p_values(all.size());
  std::ranges::transform(all, p_values.begin(), p_value);
  const auto values = adjusted_for_false_discoveries(p_values);
  for (std::size_t i = 0; i < all.size(); ++i) all[i].*adjusted = values[i];
}

/// Groups that are too small to be flagged whatever happens would only cost the others power.
std::vector<EarlyEndings> tested(const Groups& groups) {
  std::vector<EarlyEndings> all;
  for (const auto& [key, group] : groups) {
    if (static_cast<int>(group.chances.size()) >= fewest_early) all.push_back(tested(key, group));
  }
  adjust(all, &EarlyEndings::p_value, &EarlyEndings::adjusted_p);
  adjust(all, &EarlyEndings::patients_p, &EarlyEndings::adjusted_patients_p);
  for (EarlyEndings& one : all) {
    one.flagged = one.adjusted_p <= false_discovery_rate &&
                  one.adjusted_patients_p <= false_discovery_rate && one.early >= fewest_early &&
                  one.early_patients >= fewest_early_patients;
  }
  std::ranges::stable_sort(all, {}, &EarlyEndings::p_value);
  return all;
}

}  // namespace

bool Surprises::any_flagged() const {
  return std::ranges::any_of(lots, &EarlyEndings::flagged) ||
         std::ranges::any_of(items, &EarlyEndings::flagged);
}

Surprises find_surprises(const Clinic& clinic, const ClinicLife& fitted, Date today) {
  const ClinicIndex index{clinic};
  const Exposures exposures{clinic, index, today, fitted.records_begin};
  Surprises found;
  Groups lots;
  Groups items;
  for (std::size_t i = 0; i < clinic.units.size(); ++i) {
    const Unit& unit = clinic.units[i];
    const Item* item = index.item(unit.item);
    if (!item || unit.issued_on > today) continue;
    const KindLife& life = fitted.kinds.at(item->kind);
    const auto outcome = outcome_of(exposures, unit, life, item->material);
    if (!(outcome.reachable_chance > 0)) continue;  // never worn: says nothing
    found.units_by_chance += std::min(surprising_chance, outcome.reachable_chance);
    if (outcome.worn_out && outcome.chance < surprising_chance) {
      found.units.push_back({i, outcome.wear_age, outcome.median, outcome.chance});
    }
    add_to(items[{unit.item, ""}], unit, outcome);
    if (unit.lot.empty()) {
      ++found.units_without_lot;
    } else {
      add_to(lots[{unit.item, unit.lot}], unit, outcome);
    }
  }
  std::ranges::stable_sort(found.units, {}, &EarlyUnit::chance);
  found.lots = tested(lots);
  found.items = tested(items);
  found.lots_too_small = static_cast<int>(lots.size() - found.lots.size());
  return found;
}

}  // namespace sparewell::wear
