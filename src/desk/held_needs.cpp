#include "desk/held_needs.hpp"

#include <optional>
#include <unordered_map>

#include <fmt/format.h>

#include "care/fit.hpp"
#include "care/next_size.hpp"
#include "care/sensitivity.hpp"
#include "desk/issue_words.hpp"
#include "desk/substance_table.hpp"

namespace sparewell::desk {
namespace {

/// Records of each patient, so that a check does not look through those of all.
template <class Record>
class ByPatient {
 public:
  explicit ByPatient(const std::vector<Record>& records) {
    for (const Record& record : records) of_patient_[record.patient].push_back(record);
  }
  [[nodiscard]] std::span<const Record> of(const PatientRef& patient) const {
    const auto found = of_patient_.find(patient);
    return found == of_patient_.end() ? std::span<const Record>{} : found->second;
  }

 private:
  std::unordered_map<PatientRef, std::vector<Record>> of_patient_;
};

std::optional<std::string> conflict_words(const Item& item, const Unit& unit,
                                          std::span<const Sensitivity> recorded) {
  if (recorded.empty()) return std::nullopt;
  const auto verdicts =
      care::check_sensitivities(item, unit.patient, recorded, built_in_substances());
  if (verdicts.front().verdict != care::Verdict::conflict) return std::nullopt;
  return sensitivity_finding(verdicts.front(), item).words;
}

/// Empty unless the limb has left the size by a fresh measurement.
std::optional<care::FitCheck> left_size(const Item& item, const Unit& unit,
                                        std::span<const Measurement> measured, Date today) {
  const auto check = care::check_fit(item, unit.patient, unit.side, measured, today);
  const bool left = check.fit == care::Fit::limb_smaller || check.fit == care::Fit::limb_larger;
  return left && !check.old ? std::optional{check} : std::nullopt;
}

/// Why the size does not suit, and which one does.
HeldNeed held_for_size(const Item& item, const Unit& unit, const care::FitCheck& check,
                       std::span<const Sensitivity> recorded, const std::vector<Item>& catalogue) {
  HeldNeed made;
  made.words = fit_finding(check, item, unit.side).words;
  const Item* next =
      check.circumference_cm ? care::size_for(item, *check.circumference_cm, catalogue) : nullptr;
  if (next == nullptr || conflict_words(*next, unit, recorded)) return made;
  made.next_item = next->code;
  made.words = fmt::format("{} By that {} is foreseen instead.", made.words, next->code.text);
  return made;
}

}  // namespace

std::vector<HeldNeed> held_needs(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                                 Date today) {
  const ClinicIndex index{clinic};
  const ByPatient sensitivities{clinic.sensitivities};
  const ByPatient measurements{clinic.measurements};
  std::vector<HeldNeed> made;
  for (const auto& of : lives) {
    const Unit& unit = clinic.units[of.unit];
    const Item* item = index.item(unit.item);
    if (item == nullptr) continue;
    const auto recorded = sensitivities.of(unit.patient);
    HeldNeed held;
    if (const auto words = conflict_words(*item, unit, recorded)) {
      held.sensitivity = true;
      held.words = *words;
    } else if (const auto check = left_size(*item, unit, measurements.of(unit.patient), today)) {
      held = held_for_size(*item, unit, *check, recorded, clinic.items);
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
