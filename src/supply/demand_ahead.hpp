/// Demand for one item as orders that are written on one day ask for it: each question is worked
/// out once, whatever the service target, the budget or the costs.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "supply/demand.hpp"
#include "supply/proposal.hpp"

namespace sparewell::supply {

/// Every answer is the same whatever was asked before. One thread at a time.
class DemandAhead {
 public:
  /// `demand` must not have been asked yet.
  DemandAhead(ItemDemand demand, Date today, Date order_on, Date next_order_day, LeadTime lead);

  /// Pieces needed in (today, end].
  [[nodiscard]] const Pmf& until(Date end) { return exact_.until(end); }
  /// Until the order of the next order day has arrived even after the longest lead time seen.
  [[nodiscard]] const Pmf& until_latest() { return until(latest_); }
  /// Mean use a day until then.
  [[nodiscard]] double daily();
  /// Until what is ordered on the next order day arrives.
  [[nodiscard]] const Pmf& needed() { return until_arrival(next_order_day_); }
  /// Until what is ordered on the day of the order arrives.
  [[nodiscard]] const Pmf& before() { return until_arrival(order_on_); }
  /// Until what is ordered on `day` arrives.
  [[nodiscard]] const Pmf& until_arrival(Date day);
  /// What the mean of needed() is for, as a line's reason tells it.
  [[nodiscard]] double not_for_wear() const;
  [[nodiscard]] double for_new_patients() const;
  [[nodiscard]] double season_factor(Date end) const { return exact_.season_factor(end); }

  /// What a line's reason names; kept here because it takes long to find.
  struct Needs {
    std::vector<ExpectedNeed> named;
    int more = 0;
  };
  std::optional<Needs> needs;

 private:
  Date order_on_;
  Date next_order_day_;
  Date today_;
  LeadTime lead_;
  Date latest_;
  ItemDemand exact_;  ///< asked for single days only, which it does not interpolate
  std::optional<ItemDemand> near_;
  std::map<Date, Pmf> arrivals_;  ///< by the day of the order
};

}  // namespace sparewell::supply
