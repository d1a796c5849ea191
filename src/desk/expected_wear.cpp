#include "desk/expected_wear.hpp"

#include <algorithm>

namespace sparewell::desk {
Clinic of_patient(const Clinic& clinic, const PatientRef& patient) {
  Clinic made;
  made.settings = clinic.settings;
  made.items = clinic.items;
  const auto keep = [&](const auto& from, auto& to) {
    std::ranges::copy_if(from, std::back_inserter(to),
                         [&](const auto& record) { return record.patient == patient; });
  };
  keep(clinic.usage, made.usage);
  keep(clinic.prostheses, made.prostheses);
  keep(clinic.units, made.units);
  return made;
}

namespace {

/// Ends the part whose place the new one takes.
void end_replaced(Clinic& clinic, const ClinicIndex& index, const IssueQuestion& question,
                  Kind kind, Date today) {
  Unit* oldest = nullptr;
  for (Unit& unit : clinic.units) {
    const Item* item = index.item(unit.item);
    if (unit.side != question.side || item == nullptr || item->kind != kind) continue;
    if (!unit.in_use_on(today)) continue;
    if (oldest == nullptr || unit.issued_on < oldest->issued_on) oldest = &unit;
  }
  if (oldest == nullptr) return;
  oldest->ended_on = today;
  oldest->end_reason = EndReason::other;
}

}  // namespace

std::optional<int> expected_days(const Assessment& assessment, const IssueQuestion& question) {
  const ClinicIndex known{assessment.clinic};
  const Item* item = known.item(question.item);
  if (item == nullptr || known.patient(question.patient) == nullptr) return std::nullopt;
  const Date today = assessment.today;
  Clinic clinic = of_patient(assessment.clinic, question.patient);
  end_replaced(clinic, known, question, item->kind, today);
  Unit fresh;
  fresh.patient = question.patient;
  fresh.side = question.side;
  fresh.item = question.item;
  fresh.issued_on = today;
  clinic.units.push_back(fresh);
  for (const auto& of : wear::lives_of_units_in_use(clinic, assessment.fitted, today)) {
    if (of.unit + 1 != clinic.units.size()) continue;
    const auto worn = of.life.worn_out_date(0.5);
    return worn ? std::optional{days_between(today, *worn)} : std::nullopt;
  }
  return std::nullopt;
}

}  // namespace sparewell::desk
