#include "supply/demand_ahead.hpp"

#include <algorithm>

namespace sparewell::supply {

DemandAhead::DemandAhead(ItemDemand demand, Date today, Date order_on, Date next_order_day,
                         LeadTime lead)
    : order_on_{order_on},
      next_order_day_{next_order_day},
      today_{today},
      lead_{std::move(lead)},
      latest_{next_order_day + days{lead_.distribution().back().days}},
      exact_{std::move(demand)} {}

double DemandAhead::daily() {
  return until_latest().mean() / std::max(1, days_between(today_, latest_));
}

const Pmf& DemandAhead::until_arrival(Date day) {
  const auto known = arrivals_.find(day);
  if (known != arrivals_.end()) return known->second;
  if (day > next_order_day_) {
    // Asked from the start, so that it does not matter over which days another question spread.
    ItemDemand far = exact_.anew();
    return arrivals_.emplace(day, far.until_arrival(day, lead_)).first->second;
  }
  if (!near_) {
    near_.emplace(exact_.anew());
    // First the longest interval: the others are interpolated within it.
    arrivals_.emplace(next_order_day_, near_->until_arrival(next_order_day_, lead_));
    if (day == next_order_day_) return arrivals_.at(day);
  }
  return arrivals_.emplace(day, near_->until_arrival(day, lead_)).first->second;
}

double DemandAhead::not_for_wear() const {
  return exact_.not_for_wear(next_order_day_, lead_);
}

double DemandAhead::for_new_patients() const {
  return exact_.for_new_patients(next_order_day_, lead_);
}

}  // namespace sparewell::supply
