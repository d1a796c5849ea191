#include "desk/held_needs.hpp"

#include <algorithm>
#include <optional>
#include <unordered_map>

#include "care/fit.hpp"
#include "care/next_size.hpp"
#include "care/sensitivity.hpp"
#include "clinic/in_parallel.hpp"
#include "clinic/say.hpp"
#include "desk/by_patient.hpp"
#include "desk/issue_words.hpp"
#include "desk/length_words.hpp"
#include "desk/limb_forecast.hpp"
#include "desk/substance_table.hpp"
#include "desk/trend_words.hpp"
#include "supply/lead_time.hpp"

namespace sparewell::desk {
namespace {

/// Conflicts that no clinician decided about.
class Conflicts {
 public:
  Conflicts(const Clinic& clinic, Date today)
      : today_{today},
        table_{substances_of(clinic, today)},
        recorded_{clinic.sensitivities},
        decisions_{clinic.decisions} {}

  [[nodiscard]] std::optional<std::string> words(const Item& item, const Unit& unit) const {
    const auto recorded = recorded_.of(unit.patient);
    if (recorded.empty()) return std::nullopt;
    const auto verdicts = care::check_sensitivities(item, unit.patient, recorded, *table_,
                                                    decisions_.of(unit.patient), today_);
    const auto& gravest = verdicts.front();
    if (gravest.verdict != care::Verdict::conflict || gravest.decided) return std::nullopt;
    return sensitivity_finding(gravest, item).words;
  }

 private:
  Date today_;
  std::shared_ptr<const care::SubstanceTable> table_;
  ByPatient<Sensitivity> recorded_;
  ByPatient<SensitivityDecision> decisions_;
};

/// Empty unless the limb has left the size by a fresh measurement.
std::optional<care::FitCheck> left_size(const Item& item,
                                        const std::vector<care::LimbReading>& readings,
                                        Date today) {
  const auto check = care::check_fit(item, readings, today);
  const bool left = check.fit == care::Fit::limb_smaller || check.fit == care::Fit::limb_larger;
  return left && !check.old ? std::optional{check} : std::nullopt;
}

/// The day on which an order of the next order day has arrived, by the mean lead time.
class ProtectedUntil {
 public:
  ProtectedUntil(const Clinic& clinic, const ClinicIndex& index, Date today)
      : lead_times_{clinic}, index_{index}, today_{today} {}

  [[nodiscard]] Date of(const Item& item) const {
    const Supplier* supplier = index_.supplier(item.supplier);
    const OrderDays days_of_order = supplier == nullptr ? OrderDays{} : supplier->order_days;
    return next_order_day(days_of_order, today_) + days{lead_times_.of(item).mean_days()};
  }

 private:
  supply::LeadTimes lead_times_;
  const ClinicIndex& index_;
  Date today_;
};

/// The day whose limb decides which size an order of today should be; empty: none is ordered.
std::optional<Date> deciding_day(const Item& item, const wear::UnitLife& life,
                                 const ProtectedUntil& protected_until) {
  const auto replaced = life.worn_out_date(0.5);
  if (!item.stocked) return replaced;
  const Date covered = protected_until.of(item);
  return std::min(replaced.value_or(covered), covered);
}

/// What is foreseen instead of `item` for a limb of that circumference, written into `made`.
void foresee_instead(HeldNeed& made, const Item& item, const Unit& unit, double circumference_cm,
                     const Conflicts& conflicts, const std::vector<Item>& catalogue) {
  const Item* next = care::size_for(item, circumference_cm, catalogue);
  if (next == nullptr) {
    made.words =
        say("{} The catalogue has no size of the same part that suits {}, "
            "so that nothing is ordered for it.",
            made.words, length_words(circumference_cm));
  } else if (conflicts.words(*next, unit)) {
    made.words = say("{} {} would suit it, and conflicts with a recorded sensitivity.", made.words,
                     next->code.text);
  } else {
    made.next_item = next->code;
    made.words = say("{} Therefore {} is foreseen instead.", made.words, next->code.text);
  }
}

HeldNeed held_for_forecast(const Item& item, const care::LimbTrend& trend, Date decided_on) {
  HeldNeed made;
  made.forecast = true;
  made.chance_outside = trend.chance_outside(item, decided_on);
  made.words = leaving_words(trend, item, decided_on);
  return made;
}

struct HeldForSize {
  HeldNeed need;
  double circumference_cm = 0;  ///< that a size is wanted for
};

/// Why the size does not suit the limb, or will not when what is ordered today is handed over.
std::optional<HeldForSize> held_for_size(const Item& item, const Unit& unit,
                                         const wear::LifeOfUnit& of, const LimbRecords& limbs,
                                         const ProtectedUntil& protected_until, Date today) {
  if (!care::has_size(item)) return std::nullopt;
  const auto readings = limbs.readings(unit, item, today);
  if (const auto check = left_size(item, readings, today)) {
    HeldForSize made;
    made.need.words = fit_finding(*check, item, unit.side).words;
    made.circumference_cm = *check->circumference_cm;
    return made;
  }
  if (!of.needed_until) return std::nullopt;
  const auto decided_on = deciding_day(item, of.life, protected_until);
  if (!decided_on || *of.needed_until >= *decided_on) return std::nullopt;
  const auto trend = limbs.trend(unit.patient, unit.side, readings, today);
  if (!trend) return std::nullopt;
  return HeldForSize{held_for_forecast(item, *trend, *decided_on),
                     trend->on(*decided_on).circumference_cm};
}

}  // namespace

std::vector<HeldNeed> held_needs(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                                 Date today) {
  return held_needs(clinic, LimbRecords{clinic}, lives, today);
}

std::vector<HeldNeed> held_needs(const Clinic& clinic, const LimbRecords& limbs,
                                 const std::vector<wear::LifeOfUnit>& lives, Date today) {
  const ClinicIndex index{clinic};
  const Conflicts conflicts{clinic, today};
  const ProtectedUntil protected_until{clinic, index, today};
  std::vector<std::optional<HeldNeed>> looked(lives.size());
  in_parallel(lives.size(), [&](std::size_t i) {
    const auto& of = lives[i];
    const Unit& unit = clinic.units[of.unit];
    const Item* item = index.item(unit.item);
    if (item == nullptr) return;
    HeldNeed held;
    if (const auto words = conflicts.words(*item, unit)) {
      held.sensitivity = true;
      held.words = *words;
    } else {
      const auto found = held_for_size(*item, unit, of, limbs, protected_until, today);
      if (!found) return;
      held = found->need;
      foresee_instead(held, *item, unit, found->circumference_cm, conflicts, clinic.items);
    }
    held.unit = of.unit;
    held.chance = of.life.chance_worn_by(today + days{told_days});
    held.words = say("{} A clinician decides what follows.", held.words);
    looked[i] = std::move(held);
  });
  std::vector<HeldNeed> made;
  for (auto& held : looked) {
    if (held) made.push_back(std::move(*held));
  }
  return made;
}

std::vector<wear::LifeOfUnit> without_held(const std::vector<wear::LifeOfUnit>& lives,
                                           const std::vector<HeldNeed>& held) {
  std::unordered_map<std::size_t, const HeldNeed*> units;
  for (const HeldNeed& need : held) units.emplace(need.unit, &need);
  std::vector<wear::LifeOfUnit> made;
  made.reserve(lives.size());
  for (const auto& life : lives) {
    const auto need = units.find(life.unit);
    if (need != units.end() && !need->second->next_item) continue;
    made.push_back(life);
    if (need == units.end()) continue;
    made.back().next_item = need->second->next_item;
    made.back().needed_until.reset();
  }
  return made;
}

}  // namespace sparewell::desk
