#include "desk/held_needs.hpp"

#include <optional>
#include <unordered_map>
#include <unordered_set>

#include <fmt/format.h>

#include "care/fit.hpp"
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

std::optional<std::string> size_words(const Item& item, const Unit& unit,
                                      std::span<const Measurement> measured, Date today) {
  const auto check = care::check_fit(item, unit.patient, unit.side, measured, today);
  const bool left = check.fit == care::Fit::limb_smaller || check.fit == care::Fit::limb_larger;
  if (!left || check.old) return std::nullopt;
  return fit_finding(check, item, unit.side).words;
}

}  // namespace

std::vector<HeldNeed> held_needs(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                                 Date today) {
  const ClinicIndex index{clinic};
  const ByPatient sensitivities{clinic.sensitivities};
  const ByPatient measurements{clinic.measurements};
  std::vector<HeldNeed> made;
  for (const auto& [position, life, others] : lives) {
    const Unit& unit = clinic.units[position];
    const Item* item = index.item(unit.item);
    if (item == nullptr) continue;
    auto words = conflict_words(*item, unit, sensitivities.of(unit.patient));
    const bool sensitivity = words.has_value();
    if (!words) words = size_words(*item, unit, measurements.of(unit.patient), today);
    if (!words) continue;
    made.push_back({position, sensitivity, life.chance_worn_by(today + days{told_days}),
                    fmt::format("{} A clinician decides what follows.", *words)});
  }
  return made;
}

std::vector<wear::LifeOfUnit> without_held(const std::vector<wear::LifeOfUnit>& lives,
                                           const std::vector<HeldNeed>& held) {
  std::unordered_set<std::size_t> units;
  for (const HeldNeed& need : held) units.insert(need.unit);
  std::vector<wear::LifeOfUnit> made;
  made.reserve(lives.size());
  for (const auto& life : lives) {
    if (!units.contains(life.unit)) made.push_back(life);
  }
  return made;
}

}  // namespace sparewell::desk
