#include "desk/visit_sheet.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/usage_words.hpp"

namespace sparewell::desk {
namespace {

VisitSheet sheet_of(const Day& day, const PatientRef& patient, Date on, Bench& bench) {
  const auto& clinic = day.clinic();
  VisitSheet sheet;
  sheet.patient = patient;
  if (const auto* known = day.index().patient(patient)) sheet.name = full_name(*known);
  sheet.prostheses = prosthesis_words(clinic, patient);
  sheet.sensitivities = sensitivity_words(clinic, patient);
  sheet.sensitive = std::ranges::any_of(
      clinic.sensitivities, [&](const auto& noted) { return noted.patient == patient; });
  sheet.findings = visit_findings(day, patient, on);
  sheet.near_end = parts_near_end(day, patient, on);
  sheet.bench = bench.pieces_for(patient, sheet.near_end);
  return sheet;
}

}  // namespace

int VisitSheet::count(care::Gravity gravity) const {
  return static_cast<int>(std::ranges::count(findings, gravity, &VisitFinding::gravity));
}

int VisitSheet::missing() const {
  int all = 0;
  for (const auto& pieces : bench) all += pieces.missing();
  return all;
}

std::map<PatientRef, std::string> patients_expected(const Day& day, Date on) {
  std::map<PatientRef, std::string> made;
  for (const auto& booking : day.clinic().reservations) {
    if (booking.needed_on == on && booking.quantity > 0) {
      made[booking.patient] = said("parts are booked for this day");
    }
  }
  for (const auto& patient : day.clinic().patients) {
    if (patient.next_visit == on) made[patient.ref] = said("next visit");
  }
  return made;
}

std::optional<Date> next_visits(const Day& day, Date after) {
  std::optional<Date> next;
  const auto look_at = [&](const std::optional<Date> on) {
    if (on && *on > after && (!next || *on < *next)) next = on;
  };
  for (const auto& booking : day.clinic().reservations) {
    if (booking.quantity > 0) look_at(booking.needed_on);
  }
  for (const auto& patient : day.clinic().patients) look_at(patient.next_visit);
  return next;
}

VisitDay visit_day(const Day& day, Date on) {
  Bench bench{day, on};
  VisitDay made{on, {}};
  for (const auto& [patient, reason] : patients_expected(day, on)) {
    made.sheets.push_back(sheet_of(day, patient, on, bench));
    made.sheets.back().reason = reason;
  }
  return made;
}

}  // namespace sparewell::desk
