#include "care/worn.hpp"

namespace sparewell::care {

const Prosthesis* prosthesis_in_use(std::span<const Prosthesis> prostheses,
                                    const PatientRef& patient, Side side, Date day) {
  const Prosthesis* latest = nullptr;
  for (const Prosthesis& each : prostheses) {
    if (each.side != side || each.delivered_on > day || each.patient != patient) continue;
    if (each.ended_on && *each.ended_on <= day) continue;
    if (latest == nullptr || latest->delivered_on <= each.delivered_on) latest = &each;
  }
  return latest;
}

Worn worn_on(const Clinic& clinic, const ClinicIndex& index, const PatientRef& patient, Side side,
             Date day) {
  Worn made;
  made.prosthesis = prosthesis_in_use(clinic.prostheses, patient, side, day);
  for (const auto& unit : clinic.units) {
    if (unit.patient != patient || unit.side != side || !unit.in_use_on(day)) continue;
    if (const auto* item = index.item(unit.item)) {
      made.items.push_back(item);
    } else {
      ++made.without_item;
    }
  }
  return made;
}

}  // namespace sparewell::care
