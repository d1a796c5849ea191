#include "desk/held_needs.hpp"

#include <optional>
#include <unordered_map>

#include <fmt/format.h>

#include "care/fit.hpp"
#include "care/next_size.hpp"
#include "care/sensitivity.hpp"
#include "desk/by_patient.hpp"
#include "desk/issue_words.hpp"
#include "desk/substance_table.hpp"

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
std::optional<care::FitCheck> left_size(const Item& item, const Unit& unit,
                                        std::span<const Measurement> measured, Date today) {
  const auto check = care::check_fit(item, unit.patient, unit.side, measured, today);
  const bool left = check.fit == care::Fit::limb_smaller || check.fit == care::Fit::limb_larger;
  return left && !check.old ? std::optional{check} : std::nullopt;
}

/// Why the size does not suit, and which one does.
HeldNeed held_for_size(const Item& item, const Unit& unit, const care::FitCheck& check,
                       const Conflicts& conflicts, const std::vector<Item>& catalogue) {
  HeldNeed made;
  made.words = fit_finding(check, item, unit.side).words;
  const Item* next =
      check.circumference_cm ? care::size_for(item, *check.circumference_cm, catalogue) : nullptr;
  if (next == nullptr || conflicts.words(*next, unit)) return made;
  made.next_item = next->code;
  made.words = fmt::format("{} By that {} is foreseen instead.", made.words, next->code.text);
  return made;
}

}  // namespace

std::vector<HeldNeed> held_needs(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                                 Date today) {
  const ClinicIndex index{clinic};
  const Conflicts conflicts{clinic, today};
  const ByPatient measurements{clinic.measurements};
  std::vector<HeldNeed> made;
  for (const auto& of : lives) {
    const Unit& unit = clinic.units[of.unit];
    const Item* item = index.item(unit.item);
    if (item == nullptr) continue;
    HeldNeed held;
    if (const auto words = conflicts.words(*item, unit)) {
      held.sensitivity = true;
      held.words = *words;
    } else if (const auto check = left_size(*item, unit, measurements.of(unit.patient), today)) {
      held = held_for_size(*item, unit, *check, conflicts, clinic.items);
    } else {
      continue;
    }
    held.unit = of.unit;
    held.chance = of.life.chance_worn_by(today + days{told_days});
    held.words = fmt::format("{} A clinician decides what follows.", held.words);
    made.push_back(std::move(held));
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
    if (need != units.end()) made.back().next_item = need->second->next_item;
  }
  return made;
}

}  // namespace sparewell::desk
