#include "desk/assessment.hpp"

#include <algorithm>

#include "desk/assessment_stages.hpp"
#include "desk/limb_forecast.hpp"
#include "supply/place_demand.hpp"

namespace sparewell::desk {

namespace {

bool patients_elsewhere(const Clinic& clinic) {
  const Branches branches{clinic};
  return std::ranges::any_of(clinic.patients, [&](const Patient& patient) {
    return !patient.place.empty() && branches.of(patient.ref) > 0;
  });
}

}  // namespace

Assessment records_only(Clinic clinic, Date today) {
  Assessment made;
  made.today = today;
  made.clinic = as_of(std::move(clinic), today);
  made.worked_out = false;
  return made;
}

Assessment forecast(Clinic clinic, const wear::PriorTable& priors, Date today) {
  Assessment made;
  made.today = today;
  made.clinic = as_of(std::move(clinic), today);
  made.fitted = wear::fit_clinic(made.clinic, priors, today);
  made.lives = wear::lives_of_units_in_use(made.clinic, made.fitted, today);
  const LimbRecords limbs{made.clinic};
  foresee_limbs(made.clinic, limbs, made.lives, today);
  made.held_needs = held_needs(made.clinic, limbs, made.lives, today);
  return made;
}

Assessment assess(Clinic clinic, const wear::PriorTable& priors, Date today) {
  const auto policy = supply::policy_of(clinic.settings);
  return assess(std::move(clinic), priors, today, policy);
}

Assessment assess(Clinic clinic, const wear::PriorTable& priors, Date today,
                  const supply::OrderPolicy& policy) {
  return *assess_in_stages(std::move(clinic), priors, today, policy,
                           [](AssessmentStage) { return true; });
}

std::optional<Assessment> assess_in_stages(Clinic clinic, const wear::PriorTable& priors,
                                           Date today, const supply::OrderPolicy& policy,
                                           const AssessmentWatch& goes_on) {
  if (!goes_on(AssessmentStage::wear)) return std::nullopt;
  Assessment made = forecast(std::move(clinic), priors, today);
  if (!goes_on(AssessmentStage::orders)) return std::nullopt;
  const auto not_held = made.held_needs.empty() ? std::vector<wear::LifeOfUnit>{}
                                                : without_held(made.lives, made.held_needs);
  const auto& lives = made.held_needs.empty() ? made.lives : not_held;
  auto proposal = supply::propose(made.clinic, lives, today, policy);
  if (patients_elsewhere(made.clinic)) {
    const supply::PlaceDemand by_place{made.clinic, lives, today};
    supply::tell_places(proposal.lines, made.clinic, by_place);
  }
  made.budget = policy.budget;
  made.proposal = std::move(proposal.lines);
  made.held = std::move(proposal.held);
  return made;
}

}  // namespace sparewell::desk
