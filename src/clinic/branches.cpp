#include "clinic/branches.hpp"

#include <algorithm>
#include <set>

namespace sparewell {

Branches::Branches(const Clinic& clinic) {
  std::set<std::string> names;
  const auto add = [&](const std::string& name) {
    if (name.empty() || name == clinic.settings.main_place || names.contains(name)) return;
    if (is_name_of_program(name)) return;
    if (sort_of_place(clinic.places, name) == PlaceSort::store) names.insert(name);
  };
  for (const Place& place : clinic.places) add(place.name);
  for (const StockLevel& level : clinic.shelf) add(level.place);
  for (const Reservation& reservation : clinic.reservations) add(reservation.place);
  for (const Patient& patient : clinic.patients) add(patient.place);
  names_.push_back(clinic.settings.main_place);
  names_.insert(names_.end(), names.begin(), names.end());
  for (const Patient& patient : clinic.patients) {
    const auto at = patient.place.empty() ? std::nullopt : position(patient.place);
    if (at && *at > 0) elsewhere_.emplace(patient.ref, *at);
  }
}

std::optional<std::size_t> Branches::position(const std::string& name) const {
  const auto found = std::ranges::find(names_, name);
  if (found == names_.end()) return std::nullopt;
  return static_cast<std::size_t>(found - names_.begin());
}

std::size_t Branches::of(const PatientRef& patient) const {
  const auto found = elsewhere_.find(patient);
  return found == elsewhere_.end() ? 0 : found->second;
}

}  // namespace sparewell
