#include "care/worn.hpp"

namespace sparewell::care {

Worn worn_on(const Clinic& clinic, const ClinicIndex& index, const PatientRef& patient, Side side,
             Date day) {
  Worn made;
  for (const auto& prosthesis : clinic.prostheses) {
    if (prosthesis.patient != patient || prosthesis.side != side) continue;
    if (prosthesis.delivered_on > day || (prosthesis.ended_on && *prosthesis.ended_on <= day)) {
      continue;
    }
    if (made.prosthesis && made.prosthesis->delivered_on > prosthesis.delivered_on) continue;
    made.prosthesis = &prosthesis;
  }
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
