#include "desk/assessment.hpp"

namespace sparewell::desk {

Assessment forecast(Clinic clinic, const wear::PriorTable& priors, Date today) {
  Assessment made;
  made.today = today;
  made.clinic = as_of(std::move(clinic), today);
  made.fitted = wear::fit_clinic(made.clinic, priors, today);
  made.lives = wear::lives_of_units_in_use(made.clinic, made.fitted, today);
  made.held_needs = held_needs(made.clinic, made.lives, today);
  return made;
}

Assessment assess(Clinic clinic, const wear::PriorTable& priors, Date today) {
  const auto policy = supply::policy_of(clinic.settings);
  return assess(std::move(clinic), priors, today, policy);
}

Assessment assess(Clinic clinic, const wear::PriorTable& priors, Date today,
                  const supply::OrderPolicy& policy) {
  Assessment made = forecast(std::move(clinic), priors, today);
  auto proposal =
      made.held_needs.empty()
          ? supply::propose(made.clinic, made.lives, today, policy)
          : supply::propose(made.clinic, without_held(made.lives, made.held_needs), today, policy);
  made.budget = policy.budget;
  made.proposal = std::move(proposal.lines);
  made.held = std::move(proposal.held);
  return made;
}

}  // namespace sparewell::desk
