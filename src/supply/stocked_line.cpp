#include "supply/stocked_line.hpp"

#include <algorithm>

namespace sparewell::supply {
namespace {

/// The last order day on which ordering would still keep the service target; today when none would.
Date order_by(const ItemCase& given, ItemDemand& demand, int position) {
  std::vector<Date> choices;
  for (Date day = given.today; day < given.next_order_day; day += days{1}) {
    if (day == given.today || is_order_day(given.order_days, day)) choices.push_back(day);
  }
  // A later order leaves a longer interval to cover, so the days that keep the target come first.
  const auto first_late = std::ranges::partition_point(choices, [&](Date day) {
    return demand.until_arrival(day, given.lead).at_most(position) >=
           given.clinic.settings.service_target;
  });
  return first_late == choices.begin() ? given.today : *(first_late - 1);
}

/// True when the position reaches the target even with the longest lead time seen, as it does for
/// most items on most days; it then does for the mixture of lead times too.
bool covers_latest_arrival(const ItemCase& given, ItemDemand& demand, int position) {
  const days longest{given.lead.distribution().back().days};
  return demand.until(given.next_order_day + longest)
             .least_covering(given.clinic.settings.service_target) <= position;
}

void name_needs(const ItemCase& given, Reason& reason) {
  struct Candidate {
    const wear::LifeOfUnit* life;
    double chance;
  };
  std::vector<Candidate> candidates;
  for (const auto* life : given.lives) {
    const double chance = at_most_needed_by_arrival(*life, given.next_order_day, given.lead);
    if (chance >= least_named_chance) candidates.push_back({life, chance});
  }
  std::ranges::stable_sort(candidates, std::ranges::greater{}, &Candidate::chance);
  const std::size_t named = std::min(candidates.size(), most_named_needs);
  reason.more_needs = static_cast<int>(candidates.size() - named);
  candidates.resize(named);
  for (Candidate& each : candidates) {
    each.chance = chance_needed_by_arrival(*each.life, given.next_order_day, given.lead);
  }
  std::erase_if(candidates, [](const Candidate& c) { return c.chance < least_named_chance; });
  std::ranges::stable_sort(candidates, std::ranges::greater{}, &Candidate::chance);
  for (const Candidate& each : candidates) {
    reason.needs.push_back(need_of(given, *each.life, each.chance));
  }
}

}  // namespace

std::optional<ProposalLine> stocked_line(const ItemCase& given) {
  ItemDemand demand = demand_of(given);
  const int position = given.position.total();
  if (covers_latest_arrival(given, demand, position)) return std::nullopt;
  const Pmf needed = demand.until_arrival(given.next_order_day, given.lead);
  const int target = needed.least_covering(given.clinic.settings.service_target);
  if (position >= target) return std::nullopt;

  ProposalLine line = line_for(given, target - position);
  line.target = target;
  line.chance_short = needed.more_than(position);
  line.order_by = order_by(given, demand, position);
  line.reason.expected_demand = needed.mean();
  line.reason.expected_not_for_wear = demand.not_for_wear(given.next_order_day, given.lead);
  line.reason.season_factor = demand.season_factor(line.reason.protected_until);
  line.reason.expected_for_new_patients = demand.for_new_patients(given.next_order_day, given.lead);
  name_needs(given, line.reason);
  return line;
}

}  // namespace sparewell::supply
