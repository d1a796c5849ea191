#include "desk/assessment.hpp"

namespace sparewell::desk {

Assessment forecast(Clinic clinic, const wear::PriorTable& priors, Date today) {
  Assessment made;
  made.today = today;
  made.clinic = as_of(std::move(clinic), today);
  made.fitted = wear::fit_clinic(made.clinic, priors, today);
  made.lives = wear::lives_of_units_in_use(made.clinic, made.fitted, today);
  return made;
}

Assessment assess(Clinic clinic, const wear::PriorTable& priors, Date today) {
  Assessment made = forecast(std::move(clinic), priors, today);
  made.proposal = supply::propose(made.clinic, made.lives, today);
  return made;
}

}  // namespace sparewell::desk
