#include "desk/fit_view.hpp"

#include <algorithm>
#include <atomic>
#include <map>
#include <tuple>

#include "care/next_size.hpp"
#include "care/sensitivity.hpp"
#include "clinic/in_parallel.hpp"
#include "desk/fit_words.hpp"
#include "desk/issue_pieces.hpp"
#include "desk/issue_words.hpp"
#include "desk/substance_table.hpp"

namespace sparewell::desk {
namespace {

/// That no clinician decided about.
bool conflicts(const Clinic& clinic, const Item& item, const PatientRef& patient, Date today) {
  const auto verdicts = care::check_sensitivities(
      item, patient, clinic.sensitivities, *substances_of(clinic, today), clinic.decisions, today);
  return verdicts.front().verdict == care::Verdict::conflict && !verdicts.front().decided;
}

/// The circumference that another size is wanted for; empty while the present one does.
std::optional<double> wanted_for(const FitPart& part) {
  if (part.outside_now()) return part.check.circumference_cm;
  if (part.predicted && care::likelier_than_not(part.chance_outside()))
    return part.predicted->circumference_cm;
  return std::nullopt;
}

void foresee(FitPart& part) {
  if (!part.trend || !care::has_size(part.item)) return;
  const auto& trend = *part.trend;
  part.predicted = trend.on(part.by);
  if (part.item.size_min_cm) {
    part.chance_below = trend.chance_below(*part.item.size_min_cm, part.by);
  }
  if (part.item.size_max_cm) {
    part.chance_above = trend.chance_above(*part.item.size_max_cm, part.by);
  }
}

FitPart part_of(const LimbRecords& limbs, const Unit& unit, const Item& item, Date by, Date today) {
  FitPart made;
  made.patient = unit.patient;
  made.side = unit.side;
  made.item = item;
  made.by = by;
  made.readings = limbs.readings(unit, item, today);
  made.check = care::check_fit(item, made.readings, today);
  made.trend = limbs.trend(unit.patient, unit.side, made.readings, today);
  foresee(made);
  return made;
}

void find_day_and_size(FitPart& part, const Clinic& clinic, Date today) {
  if (part.trend) {
    part.likely_outside = care::likelier_than_not(part.trend->chance_outside(part.item, today))
                              ? std::optional{today}
                              : part.trend->likely_outside(part.item, today);
  }
  const auto circumference = wanted_for(part);
  part.wants_next = circumference.has_value();
  if (!circumference) return;
  const Item* next = care::size_for(part.item, *circumference, clinic.items);
  if (next == nullptr) return;
  part.next = next->code;
  part.next_conflicts = conflicts(clinic, *next, part.patient, today);
  part.next_on_hand = free_pieces(clinic, next->code, part.patient, today);
}

using PartKey = std::tuple<PatientRef, Side, ItemCode>;

/// Units in use of items with a size, those alike in patient, side and item counted.
std::map<PartKey, std::pair<const Unit*, int>> sized_units(const Clinic& clinic,
                                                           const ClinicIndex& index, Date today,
                                                           const PatientRef* patient) {
  std::map<PartKey, std::pair<const Unit*, int>> made;
  for (const Unit& unit : clinic.units) {
    if (patient != nullptr && unit.patient != *patient) continue;
    if (!unit.in_use_on(today)) continue;
    const Item* item = index.item(unit.item);
    if (item == nullptr || !care::has_size(*item)) continue;
    auto& [first, count] = made[{unit.patient, unit.side, unit.item}];
    if (first == nullptr) first = &unit;
    ++count;
  }
  return made;
}

std::optional<care::SockSign> sign_of(const Clinic& clinic, const ClinicIndex& index,
                                      const PatientRef& patient, Side side, Date today) {
  std::vector<const Unit*> units;
  for (const Unit& unit : clinic.units) {
    if (unit.patient == patient && unit.side == side) units.push_back(&unit);
  }
  return care::sock_sign(units, index, today);
}

}  // namespace

double FitPart::chance_outside() const {
  return std::min(1.0, chance_below + chance_above);
}

bool FitPart::outside_now() const {
  return (check.fit == care::Fit::limb_smaller || check.fit == care::Fit::limb_larger) &&
         !check.old;
}

FitReport fit_report(const Clinic& clinic, const PatientRef& patient, std::optional<Side> side,
                     Date by, Date today) {
  const ClinicIndex index{clinic};
  const LimbRecords limbs{clinic, patient};
  FitReport made{patient, today, by, {}, {}, false};
  for (const auto& [key, worn] : sized_units(clinic, index, today, &patient)) {
    const auto& [unit, count] = worn;
    if (side && unit->side != *side) continue;
    made.parts.push_back(part_of(limbs, *unit, *index.item(unit->item), by, today));
    made.parts.back().units = count;
    find_day_and_size(made.parts.back(), clinic, today);
  }
  for (const Side each : {Side::left, Side::right}) {
    if (side && *side != each) continue;
    if (const auto sign = sign_of(clinic, index, patient, each, today)) {
      made.socks.push_back({each, *sign});
    }
    made.measured = made.measured || !limbs.heights(patient, each, today).empty();
  }
  return made;
}

LeavingParts leaving_parts(const Clinic& clinic, Date by, Date today) {
  const ClinicIndex index{clinic};
  const LimbRecords limbs{clinic};
  std::vector<std::pair<const Unit*, int>> units;
  for (const auto& [key, worn] : sized_units(clinic, index, today, nullptr)) units.push_back(worn);
  std::vector<std::optional<FitPart>> looked(units.size());
  std::atomic<int> not_known = 0;
  in_parallel(units.size(), [&](std::size_t i) {
    auto part = part_of(limbs, *units[i].first, *index.item(units[i].first->item), by, today);
    if (!part.trend) ++not_known;
    if (!part.outside_now() && !care::likelier_than_not(part.chance_outside())) return;
    part.units = units[i].second;
    find_day_and_size(part, clinic, today);
    looked[i] = std::move(part);
  });
  LeavingParts made;
  made.not_known = not_known;
  for (auto& part : looked) {
    if (part) made.parts.push_back(std::move(*part));
  }
  std::ranges::stable_sort(made.parts, std::ranges::greater{}, [](const FitPart& part) {
    return std::pair{part.outside_now(), part.chance_outside()};
  });
  return made;
}

std::vector<LimbFinding> limb_findings(const Clinic& clinic, const PatientRef& patient,
                                       Date today) {
  const auto report =
      fit_report(clinic, patient, std::nullopt, today + days{leaving_soon_days}, today);
  std::vector<LimbFinding> made;
  for (const FitPart& part : report.parts) {
    if (part.outside_now() || !care::likelier_than_not(part.chance_outside())) continue;
    made.push_back({part.side,
                    part.item.code,
                    {"size_leaving", care::Gravity::ask, true,
                     leaving_words(*part.trend, part.item, report.by)}});
  }
  for (const SockFinding& socks : report.socks) {
    made.push_back({socks.side, {}, {"sock_sign", care::Gravity::ask, true, sock_words(socks)}});
  }
  return made;
}

}  // namespace sparewell::desk
