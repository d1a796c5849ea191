#include "simulated/simulate.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "random.hpp"
#include "simulated/usage_history.hpp"

namespace sparewell::simulated {
namespace {

using sample::Random;

constexpr double days_a_year = 365.25;
constexpr int farthest_days = 36525;
constexpr std::size_t most_in_turn = 2;

/// The items of one kind, by material.
using Catalogue = std::map<Material, std::vector<ItemCode>>;

/// One place on a limb that a patient keeps filled.
struct Place {
  std::optional<std::size_t> unit;  ///< position among all units, in use
  double life = 0;                  ///< X
  double age = 0;                   ///< x
  Date due;                         ///< when it is filled next
};

/// All units of one kind that one patient wears on one side.
struct Set {
  const KindLaw* law = nullptr;
  PatientRef patient;
  Side side = Side::left;
  double multiplier = 1;
  const std::vector<ItemCode>* items = nullptr;
  double scale_days = 1;
  ItemCode favourite;
};

class Simulation {
 public:
  Simulation(const ClinicLaw& law, Date today, std::uint64_t seed)
      : law_{law}, today_{today}, seed_{seed} {
    made_.today = today;
    begin_ = today - whole_days(law.years);
    if (law.years_before > 0) made_.records_begin = begin_;
    add_items();
  }

  void add_patient(int number) {
    Random random{seed_, static_cast<std::uint64_t>(number) + 1};
    Patient patient;
    patient.ref = {fmt::format("P{:04}", number)};
    const int reach = days_between(begin_ - whole_days(law_.years_before), today_);
    const Date start = today_ - days{random.whole(30, std::max(31, reach))};
    const UsageHistory usage{law_.usage, start, today_, random};
    made_.clinic.patients.push_back(patient);
    usage.record(patient.ref, made_.records_begin, random, made_.clinic.usage, made_.true_usage);
    const int sides = random.chance(law_.bilateral) ? 2 : 1;
    for (std::size_t k = 0; k < law_.kinds.size(); ++k) {
      const KindLaw& kind = law_.kinds[k];
      if (!random.chance(kind.worn_by)) continue;
      const double multiplier = kind.theta > 0 ? kind.theta * random.gamma(1 / kind.theta) : 1.0;
      for (int side = 0; side < sides; ++side) {
        Set set;
        set.law = &kind;
        set.patient = patient.ref;
        set.side = side == 0 ? Side::left : Side::right;
        set.multiplier = multiplier;
        choose_items(set, catalogues_[k], random);
        wear(set, start, usage, random);
      }
    }
  }

  SimulatedClinic finish() && {
    std::ranges::sort(made_.ends, {}, &TrueEnd::unit);
    if (made_.records_begin) drop_unrecorded();
    return std::move(made_);
  }

 private:
  static days whole_days(double years) {
    return days{static_cast<int>(std::lround(years * days_a_year))};
  }

  void add_items() {
    Random random{seed_, 0};
    for (const KindLaw& kind : law_.kinds) {
      Catalogue& catalogue = catalogues_.emplace_back();
      for (const auto& [material, scale] : kind.scale_days) {
        for (int i = 0; i < kind.items_per_material; ++i) {
          Item item;
          item.code = {fmt::format("{}-{}-{}", word(kind.kind), word(material), i + 1)};
          item.kind = kind.kind;
          item.material = material;
          made_.log_effects[item.code] = kind.item_spread * random.normal();
          catalogue[material].push_back(item.code);
          made_.clinic.items.push_back(std::move(item));
        }
      }
    }
  }

  /// A patient keeps to one material.
  static void choose_items(Set& set, const Catalogue& catalogue, Random& random) {
    const int at = random.whole(0, static_cast<int>(catalogue.size()) - 1);
    const auto& [material, items] = *std::next(catalogue.begin(), at);
    set.items = &items;
    set.scale_days = set.law->scale_days.at(material);
    set.favourite = random.pick(items);
  }

  void wear(Set& set, Date start, const UsageHistory& usage, Random& random) {
    const bool in_turn = random.chance(set.law->alternation);
    std::vector<Place> places(in_turn ? most_in_turn : 1);
    for (Place& place : places) place.due = start;
    for (Date day = start;; day += days{1}) {
      int in_use = 0;
      for (Place& place : places) {
        if (!place.unit && place.due <= day) issue(set, place, day, random);
        if (place.unit) ++in_use;
      }
      const double share = 1.0 / std::max(1, in_use);
      if (day == today_) {
        for (const Place& place : places) foresee(set, place, share, usage);
        return;
      }
      const double worn = share * usage.wear_rate(day, set.law->beta);
      for (Place& place : places) {
        if (place.unit) wear_a_day(set, place, worn, day + days{1}, random);
      }
    }
  }

  void issue(Set& set, Place& place, Date day, Random& random) {
    if (random.chance(0.15)) set.favourite = random.pick(*set.items);
    Unit unit;
    unit.patient = set.patient;
    unit.side = set.side;
    unit.item = set.favourite;
    unit.issued_on = day;
    unit.copy = static_cast<int>(made_.clinic.units.size()) + 1;
    place.unit = made_.clinic.units.size();
    place.age = 0;
    place.life = random.weibull(
        set.law->shape, set.scale_days * std::exp(made_.log_effects.at(unit.item)), set.multiplier);
    made_.clinic.units.push_back(std::move(unit));
  }

  void wear_a_day(Set& set, Place& place, double worn, Date by, Random& random) {
    place.age += worn;
    if (place.age >= place.life) {
      constexpr std::array reasons{EndReason::hole, EndReason::tear, EndReason::worn};
      end(place, by, random.pick(reasons), random);
      return;
    }
    const OtherEndings& rates = law_.endings;
    const double all = rates.lost + rates.resized + rates.reaction + rates.upgrade;
    if (!random.chance(-std::expm1(-all / days_a_year))) return;
    constexpr std::array reasons{EndReason::lost, EndReason::resized, EndReason::reaction,
                                 EndReason::upgrade};
    const EndReason reason =
        reasons.at(random.weighted({rates.lost, rates.resized, rates.reaction, rates.upgrade}));
    end(place, by, reason, random);
    if (reason != EndReason::lost) set.favourite = random.pick(*set.items);
  }

  void end(Place& place, Date by, EndReason reason, Random& random) {
    Unit& unit = made_.clinic.units[*place.unit];
    unit.ended_on = by;
    unit.end_reason = reason;
    place.unit.reset();
    place.due = by;
    if (random.chance(law_.late_replacement)) place.due += days{random.whole(1, 5)};
  }

  void foresee(const Set& set, const Place& place, double share, const UsageHistory& usage) {
    if (!place.unit) return;
    double age = place.age;
    Date day = today_;
    const Date last = today_ + days{farthest_days};
    while (age < place.life && day < last) {
      age += share * usage.wear_rate(day, set.law->beta);
      day += days{1};
    }
    made_.ends.push_back({*place.unit, day});
  }

  /// Leaves out what ended before the records begin, and moves the positions in `ends` along.
  void drop_unrecorded() {
    std::vector<Unit> kept;
    std::vector<std::size_t> new_place(made_.clinic.units.size());
    for (std::size_t i = 0; i < made_.clinic.units.size(); ++i) {
      new_place[i] = kept.size();
      const Unit& unit = made_.clinic.units[i];
      if (!unit.ended_on || *unit.ended_on > *made_.records_begin) kept.push_back(unit);
    }
    made_.clinic.units = std::move(kept);
    for (TrueEnd& end : made_.ends) end.unit = new_place[end.unit];
  }

  const ClinicLaw& law_;
  Date today_;
  Date begin_;
  std::uint64_t seed_;
  std::vector<Catalogue> catalogues_;  ///< one for each of the law's kinds
  SimulatedClinic made_;
};

}  // namespace

SimulatedClinic simulate(const ClinicLaw& law, int patients, Date today, std::uint64_t seed) {
  Simulation simulation{law, today, seed};
  for (int i = 0; i < patients; ++i) simulation.add_patient(i);
  return std::move(simulation).finish();
}

}  // namespace sparewell::simulated
