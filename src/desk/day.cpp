#include "desk/day.hpp"

namespace sparewell::desk {

Day::Day(Assessment assessment) : assessment_{std::move(assessment)}, index_{assessment_.clinic} {
  const auto& units = assessment_.clinic.units;
  for (std::size_t i = 0; i < units.size(); ++i) units_[units[i].patient].push_back(i);
  for (const auto& [unit, life] : assessment_.lives) {
    forecasts_[unit] = {life.wear_age_days(), life.worn_out_date(0.1), life.worn_out_date(0.5),
                        life.worn_out_date(0.9)};
  }
  const auto& proposal = assessment_.proposal;
  for (std::size_t i = 0; i < proposal.size(); ++i) proposed_.emplace(proposal[i].item, i);
}

const std::vector<std::size_t>& Day::units_of(const PatientRef& patient) const {
  static const std::vector<std::size_t> none;
  const auto found = units_.find(patient);
  return found == units_.end() ? none : found->second;
}

const Forecast* Day::forecast(std::size_t unit) const {
  const auto found = forecasts_.find(unit);
  return found == forecasts_.end() ? nullptr : &found->second;
}

const supply::ProposalLine* Day::proposed(const ItemCode& item) const {
  const auto found = proposed_.find(item);
  return found == proposed_.end() ? nullptr : &assessment_.proposal[found->second];
}

std::string full_name(const Patient& patient) {
  if (patient.given_name.empty() || patient.family_name.empty()) {
    return patient.given_name + patient.family_name;
  }
  return patient.given_name + " " + patient.family_name;
}

std::string patient_words(const Day& day, const PatientRef& patient) {
  const auto* known = day.index().patient(patient);
  const auto name = known ? full_name(*known) : std::string{};
  return name.empty() ? patient.text : patient.text + "  " + name;
}

}  // namespace sparewell::desk
