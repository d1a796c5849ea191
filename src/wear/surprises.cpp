#include "wear/surprises.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "clinic/in_parallel.hpp"
#include "wear/early_counts.hpp"
#include "wear/effects.hpp"
#include "wear/exposure.hpp"
#include "wear/false_discovery.hpp"

namespace sparewell::wear {
namespace {

/// The units of one patient in a lot or an item.
struct PatientShare {
  HazardsOfPatient hazards;
  int early = 0;
};

/// What the tests need to know about the units of a lot or an item.
struct Group {
  Kind kind = Kind::liner;
  int units = 0;
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

void add_to(Group& group, Kind kind, const Unit& unit, const Outcome& outcome) {
  const bool early = outcome.worn_out && outcome.chance < early_chance;
  group.kind = kind;
  ++group.units;
  group.early += early ? 1 : 0;
  PatientShare& patient = group.patients[unit.patient];
  patient.hazards.push_back(-std::log1p(-std::min(early_chance, outcome.reachable_chance)));
  patient.early += early ? 1 : 0;
}

using Points = std::map<Kind, std::vector<MultiplierPoint>>;

EarlyEndings tested(const GroupKey& key, const Group& group, const Points& multipliers) {
  const auto& multiplier = multipliers.at(group.kind);
  EarlyEndings made;
  std::tie(made.item, made.lot) = key;
  made.units = group.units;
  made.early = group.early;
  made.patients = static_cast<int>(group.patients.size());
  std::vector<HazardsOfPatient> hazards;
  std::size_t hardest = 0;
  int most = -1;
  for (const auto& [ref, patient] : group.patients) {
    made.early_patients += patient.early > 0 ? 1 : 0;
    if (patient.early > most) {
      most = patient.early;
      hardest = hazards.size();
    }
    hazards.push_back(patient.hazards);
  }
  made.expected = expected_early_endings(hazards, multiplier);
  made.p_value = chance_of_early_endings(group.early, hazards, multiplier);
  hazards.erase(hazards.begin() + static_cast<std::ptrdiff_t>(hardest));
  made.p_without_hardest_user = chance_of_early_endings(group.early - most, hazards, multiplier);
  return made;
}

void adjust(std::vector<EarlyEndings>& all) {
  std::vector<double> p_values(all.size());
  std::ranges::transform(all, p_values.begin(), &EarlyEndings::p_value);
  const auto values = adjusted_for_false_discoveries(p_values);
  for (std::size_t i = 0; i < all.size(); ++i) all[i].adjusted_p = values[i];
}

std::vector<HazardsOfPatient> hazards_of(const Group& group) {
  std::vector<HazardsOfPatient> hazards;
  for (const auto& [ref, patient] : group.patients) hazards.push_back(patient.hazards);
  return hazards;
}

/// How many times as many early endings there were in each kind as the law expects, at least 1.
/// With few the law's word counts.
std::map<Kind, double> excess_by_kind(const Groups& items, const Points& multipliers) {
  constexpr double expected_that_weigh_as_much = 20;
  struct Sum {
    double early = expected_that_weigh_as_much;
    double expected = expected_that_weigh_as_much;
  };
  std::map<Kind, Sum> sums;
  for (const auto& [key, group] : items) {
    Sum& sum = sums[group.kind];
    sum.early += group.early;
    sum.expected += expected_early_endings(hazards_of(group), multipliers.at(group.kind));
  }
  std::map<Kind, double> excess;
  for (const auto& [kind, sum] : sums) excess[kind] = std::max(1.0, sum.early / sum.expected);
  return excess;
}

void raise_hazards(Groups& groups, const std::map<Kind, double>& excess) {
  for (auto& [key, group] : groups) {
    for (auto& [ref, patient] : group.patients) {
      for (double& hazard : patient.hazards) hazard *= excess.at(group.kind);
    }
  }
}

/// Groups that are too small to be flagged whatever happens would only cost the others power.
std::vector<EarlyEndings> tested(const Groups& groups, const Points& multipliers) {
  std::vector<std::pair<const GroupKey*, const Group*>> large;
  for (const auto& [key, group] : groups) {
    if (group.units >= fewest_early) large.emplace_back(&key, &group);
  }
  std::vector<EarlyEndings> all(large.size());
  in_parallel(large.size(), [&](std::size_t i) {
    all[i] = tested(*large[i].first, *large[i].second, multipliers);
  });
  adjust(all);
  for (EarlyEndings& one : all) {
    one.flagged = one.adjusted_p <= false_discovery_rate &&
                  one.p_without_hardest_user <= rest_significance && one.early >= fewest_early &&
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
    add_to(items[{unit.item, ""}], item->kind, unit, outcome);
    if (unit.lot.empty()) {
      ++found.units_without_lot;
    } else {
      add_to(lots[{unit.item, unit.lot}], item->kind, unit, outcome);
    }
  }
  std::ranges::stable_sort(found.units, {}, &EarlyUnit::chance);
  Points multipliers;
  for (const auto& [kind, life] : fitted.kinds) {
    multipliers[kind] = multiplier_points(Multiplier::after(life.theta, 0, 0));
  }
  const auto excess = excess_by_kind(items, multipliers);
  raise_hazards(lots, excess);
  raise_hazards(items, excess);
  found.lots = tested(lots, multipliers);
  found.items = tested(items, multipliers);
  found.lots_too_small = static_cast<int>(lots.size() - found.lots.size());
  return found;
}

}  // namespace sparewell::wear
