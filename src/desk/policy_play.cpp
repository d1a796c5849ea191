#include "desk/policy_play.hpp"

#include "clinic/say.hpp"
#include "desk/forecast_test.hpp"

namespace sparewell::desk {

PolicyPlayPtr play_policy(const Day& day, const JobControl& control) {
  bool stopped = false;
  const auto goes_on = [&](double done) {
    control.say({said("Playing the policy"), done});
    stopped = control.stop.stop_requested();
    return !stopped;
  };
  supply::play::SimulationPlan plan;
  plan.service = day.clinic().settings.service_target;
  auto play = supply::play::simulate(day.clinic(), built_in_priors(), day.today(), plan, goes_on);
  return stopped ? nullptr : std::make_shared<const PolicyPlay>(std::move(play));
}

bool same_play(const Clinic& one, const Clinic& other) {
  return same_history(one, other) && one.suppliers == other.suppliers &&
         one.order_lines == other.order_lines &&
         one.settings.service_target == other.settings.service_target;
}

}  // namespace sparewell::desk
