#include "supply/stocked_line.hpp"

#include <algorithm>

#include "supply/order_cost.hpp"
#include "supply/policy.hpp"

namespace sparewell::supply {
namespace {

/// The last order day on which ordering would still keep the service target; today when none would.
Date order_by(const ItemCase& given, DemandAhead& demand, int position) {
  std::vector<Date> choices;
  for (Date day = given.today; day < given.next_order_day; day += days{1}) {
    if (day == given.today || is_order_day(given.order_days, day)) choices.push_back(day);
  }
  // A later order leaves a longer interval to cover, so the days that keep the target come first.
  const auto first_late = std::ranges::partition_point(choices, [&](Date day) {
    return demand.until_arrival(day).at_most(position) >= given.wanted.chance;
  });
  return first_late == choices.begin() ? given.today : *(first_late - 1);
}

/// True when the position reaches the target even with the longest lead time seen, as it does for
/// most items on most days; it then does for the mixture of lead times too.
bool covers_latest_arrival(const ItemCase& given, DemandAhead& demand, int position) {
  return demand.until_latest().least_covering(given.wanted.chance) <= position;
}

DemandAhead::Needs needs_of(const ItemCase& given) {
  DemandAhead::Needs made;
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
  made.more = static_cast<int>(candidates.size() - named);
  candidates.resize(named);
  for (Candidate& each : candidates) {
    each.chance = chance_needed_by_arrival(*each.life, given.next_order_day, given.lead);
  }
  std::erase_if(candidates, [](const Candidate& c) { return c.chance < least_named_chance; });
  std::ranges::stable_sort(candidates, std::ranges::greater{}, &Candidate::chance);
  for (const Candidate& each : candidates) {
    made.named.push_back(need_of(given, *each.life, each.chance));
  }
  return made;
}

void name_needs(const ItemCase& given, DemandAhead& demand, Reason& reason) {
  if (!demand.needs) demand.needs = needs_of(given);
  reason.needs = demand.needs->named;
  reason.more_needs = demand.needs->more;
}

/// Fills the line for `quantity` pieces, of which `needed` reach the target.
void fill(StockedItem& of, int target, int needed, const OrderSize& size, const Pmf& until) {
  const ItemCase& given = of.given;
  ProposalLine line = line_for(given, needed);
  line.quantity = size.quantity;
  line.unit_cost = unit_cost_at(given.item, size.quantity);
  line.target = target;
  line.chance_short = until.more_than(given.position.total());
  Reason& reason = line.reason;
  reason.least_quantity = size.least;
  reason.saves_a_year = size.saves_a_year;
  reason.chance_expires = size.chance_expires;
  reason.expected_demand = until.mean();
  reason.expected_not_for_wear = of.demand.not_for_wear();
  reason.season_factor = of.demand.season_factor(reason.protected_until);
  reason.expected_for_new_patients = of.demand.for_new_patients();
  of.line = std::move(line);
}

OrderSize size_of(StockedItem& of, int needed) {
  return order_size(of.given.item, needed, of.given.position.total(), of.daily,
                    of.given.policy.costs, [&](int pieces) { return chance_used(of, pieces); });
}

/// The chance that the target of least cost covers the demand with, no higher than wanted so far.
double chance_of_least_cost(const ItemCase& given, DemandAhead& demand, const Pmf& until) {
  constexpr double rounding = 1e-12;
  const CycleDemand cycle{demand.before(), until};
  const double chance = until.at_most(least_cost_target(cycle, *given.wanted.leftover));
  return std::clamp(chance - rounding, rounding, given.wanted.chance);
}

/// As many uses as make it certain, for all that matters, that `pieces` are used up: the chance of
/// a count to stay below half its mean less five is under 1 in 1000 (Poisson; from memory).
bool certainly_used(double expected, int pieces) {
  return expected >= 2.0 * pieces + 10;
}

}  // namespace

double chance_used(StockedItem& item, int pieces) {
  const auto& shelf_life = item.given.item.shelf_life_days;
  if (!shelf_life || pieces <= 0) return 1;
  const int lasts = *shelf_life + item.given.lead.mean_days();
  if (certainly_used(item.daily * lasts, pieces)) return 1;
  return item.demand.until(item.given.today + days{lasts}).more_than(pieces - 1);
}

StockedItem stocked_item(ItemCase given_case, DemandAhead& demand) {
  StockedItem of{std::move(given_case), demand, demand.daily(), std::nullopt, std::nullopt};
  const ItemCase& given = of.given;
  const int position = given.position.total();
  if (covers_latest_arrival(given, of.demand, position)) return of;
  of.needed = of.demand.needed();
  if (given.wanted.leftover)
    of.given.wanted.chance = chance_of_least_cost(given, of.demand, *of.needed);
  const int target = of.needed->least_covering(given.wanted.chance);
  if (position >= target) return of;
  fill(of, target, target - position, size_of(of, target - position), *of.needed);
  of.line->order_by = order_by(given, of.demand, position);
  name_needs(given, of.demand, of.line->reason);
  return of;
}

void raise_to(StockedItem& item, Date last_order_day, int count) {
  const ItemCase& given = item.given;
  const int position = given.position.total();
  const int target = item.demand.until_arrival(last_order_day).least_covering(given.wanted.chance);
  const int needed = target - position;
  if (needed <= (item.line ? item.line->quantity : 0)) return;
  const OrderSize size = size_of(item, needed);
  if (size.chance_expires > 1 - used_in_time) return;
  if (item.line) {
    item.line->quantity = size.quantity;
    item.line->unit_cost = unit_cost_at(given.item, size.quantity);
    item.line->reason.saves_a_year = size.saves_a_year;
    item.line->reason.chance_expires = size.chance_expires;
  } else {
    if (!item.needed) item.needed = item.demand.needed();
    fill(item, target, needed, size, *item.needed);
    item.line->order_by = given.next_order_day;
    item.line->reason.joins_order = true;
    name_needs(given, item.demand, item.line->reason);
  }
  item.line->target = target;
  item.line->reason.needed = needed;
  item.line->reason.order_days_covered = count;
}

void add_pieces(StockedItem& item, int pieces) {
  const ItemCase& given = item.given;
  if (!item.line) {
    if (!item.needed) item.needed = item.demand.needed();
    fill(item, given.position.total(), 0, {}, *item.needed);
    item.line->order_by = given.next_order_day;
    item.line->reason.joins_order = true;
    name_needs(given, item.demand, item.line->reason);
  }
  item.line->quantity += pieces;
  item.line->unit_cost = unit_cost_at(given.item, item.line->quantity);
  item.line->reason.for_free_freight += pieces;
}

}  // namespace sparewell::supply
