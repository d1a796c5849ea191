/// One item as the order policies see it: its users, its supplier's days and lead time, its stock.
#pragma once

#include "supply/clinic_demand.hpp"
#include "supply/order_policy.hpp"
#include "supply/proposal.hpp"
#include "supply/stock_position.hpp"

namespace sparewell::supply {

/// Refers to the clinic and to `demand`, `book` and `policy`, which must outlive it.
struct ItemCase {
  const Clinic& clinic;
  const Item& item;
  const Lives& lives;  ///< units of this item in use, in an order that the records do not change
  const ClinicDemand& demand;
  const StockBook& book;
  Date today;
  Date order_on;  ///< when the order is written: today, or later where that is asked for
  OrderDays order_days;
  Date next_order_day;  ///< the first after order_on
  LeadTime lead;
  Date booked_until;  ///< reservations for a later day do not count yet
  StockPosition position;
  const OrderPolicy& policy;
  WantedChance wanted;  ///< with which the stock should last
};

/// The case of `item`; its stock counts when usable until an order of the next order day has
/// arrived after the mean lead time. Reservations count when they are due by then; those of an item
/// that is ordered for patients by the day on which such an order has arrived with the chance
/// late_arrival_quantile.
[[nodiscard]] ItemCase item_case(const Clinic& clinic, const Item& item, const Supplier* supplier,
                                 const ClinicDemand& demand, const StockBook& book,
                                 const LeadTime& lead, const OrderPolicy& policy);

/// Demand for the item of the case.
[[nodiscard]] ItemDemand demand_of(const ItemCase& given);

/// A line with everything that both policies fill alike; quantity and unit cost follow from
/// `needed` > 0 pieces.
[[nodiscard]] ProposalLine line_for(const ItemCase& given, int needed);

/// The need of one unit; `order_by` is left empty.
[[nodiscard]] ExpectedNeed need_of(const ItemCase& given, const wear::LifeOfUnit& life,
                                   double chance);

}  // namespace sparewell::supply
