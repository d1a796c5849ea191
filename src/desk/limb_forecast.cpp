#include "desk/limb_forecast.hpp"

#include <algorithm>
#include <set>
#include <tuple>

#include "care/fit.hpp"
#include "clinic/in_parallel.hpp"

namespace sparewell::desk {

LimbRecords::LimbRecords(const Clinic& clinic) {
  patients_.reserve(clinic.patients.size());
  for (const auto& each : clinic.measurements) patients_[each.patient].measurements.push_back(each);
  for (const auto& each : clinic.prostheses) patients_[each.patient].prostheses.push_back(each);
}

LimbRecords::LimbRecords(const Clinic& clinic, const PatientRef& only) {
  OfPatient& kept = patients_[only];
  const auto of_one = [&](const auto& each) { return each.patient == only; };
  std::ranges::copy_if(clinic.measurements, std::back_inserter(kept.measurements), of_one);
  std::ranges::copy_if(clinic.prostheses, std::back_inserter(kept.prostheses), of_one);
}

const LimbRecords::OfPatient& LimbRecords::of(const PatientRef& patient) const {
  static const OfPatient nothing;
  const auto found = patients_.find(patient);
  return found == patients_.end() ? nothing : found->second;
}

std::vector<care::LimbReading> LimbRecords::readings(const Unit& unit, const Item& item,
                                                     Date day) const {
  if (!item.size_at_cm) return {};
  return readings(unit.patient, unit.side, *item.size_at_cm, day);
}

std::vector<care::LimbReading> LimbRecords::readings(const PatientRef& patient, Side side,
                                                     double at_cm, Date day) const {
  return care::readings_at(of(patient).measurements, patient, side, at_cm, day);
}

std::optional<care::LimbTrend> LimbRecords::trend(const PatientRef& patient, Side side,
                                                  const std::vector<care::LimbReading>& readings,
                                                  Date day) const {
  return care::limb_trend(of(patient).prostheses, patient, side, readings, day);
}

std::vector<double> LimbRecords::heights(const PatientRef& patient, Side side, Date day) const {
  std::set<double> made;
  for (const Measurement& each : of(patient).measurements) {
    if (each.side == side && each.measured_on <= day) made.insert(each.at_cm);
  }
  return {made.begin(), made.end()};
}

void foresee_limbs(const Clinic& clinic, const LimbRecords& limbs,
                   std::vector<wear::LifeOfUnit>& lives, Date today) {
  const ClinicIndex index{clinic};
  struct Worn {
    wear::LifeOfUnit* life;
    const Unit* unit;
    const Item* item;
  };
  std::vector<Worn> worn;
  for (auto& life : lives) {
    const Unit& unit = clinic.units[life.unit];
    const Item* item = index.item(unit.item);
    if (item == nullptr || !care::has_size(*item) || !item->size_at_cm) continue;
    worn.push_back({&life, &unit, item});
  }
  // Parts at one height of one limb share its trend.
  const auto limb_of = [](const Worn& each) {
    return std::tie(each.unit->patient, each.unit->side, *each.item->size_at_cm);
  };
  std::ranges::sort(worn, [&](const Worn& a, const Worn& b) { return limb_of(a) < limb_of(b); });
  std::vector<std::size_t> starts;
  for (std::size_t i = 0; i < worn.size(); ++i) {
    if (i == 0 || limb_of(worn[i - 1]) != limb_of(worn[i])) starts.push_back(i);
  }
  in_parallel(starts.size(), [&](std::size_t limb) {
    const std::size_t from = starts[limb];
    const std::size_t to = limb + 1 < starts.size() ? starts[limb + 1] : worn.size();
    const Unit& unit = *worn[from].unit;
    const auto trend =
        limbs.trend(unit.patient, unit.side, limbs.readings(unit, *worn[from].item, today), today);
    if (!trend) return;
    for (std::size_t i = from; i < to; ++i) {
      if (const auto leaves = trend->leaves(*worn[i].item, today)) {
        worn[i].life->needed_until = *leaves - days{1};
      }
    }
  });
}

}  // namespace sparewell::desk
