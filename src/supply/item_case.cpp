#include "supply/item_case.hpp"

#include <algorithm>

#include "supply/patient_order.hpp"
#include "supply/policy.hpp"

namespace sparewell::supply {

ItemCase item_case(const Clinic& clinic, const Item& item, const Supplier* supplier,
                   const ClinicDemand& demand, const StockBook& book, const LeadTime& lead,
                   const OrderPolicy& policy) {
  const Date today = demand.today();
  const OrderDays order_days = supplier == nullptr ? OrderDays{} : supplier->order_days;
  const Date order_on = std::max(today, policy.order_on.value_or(today));
  const Date order_day = next_order_day(order_days, order_on);
  const Date arrives = order_day + days{lead.mean_days()};
  const Date booked_until =
      item.stocked ? arrives : order_day + days{lead.quantile(late_arrival_quantile)};
  const Date overdue_before = today - days{2 * lead.mean_days()};
  return ItemCase{
      clinic,
      item,
      demand.users(item.code),
      demand,
      book,
      today,
      order_on,
      order_days,
      order_day,
      lead,
      booked_until,
      book.position(item.code, arrives, overdue_before, booked_until),
      policy,
      wanted_chance(policy, item, days_between(order_on, order_day))};
}

ItemDemand demand_of(const ItemCase& given) {
  return given.demand.of(given.item);
}

ProposalLine line_for(const ItemCase& given, int needed) {
  ProposalLine line;
  line.supplier = given.item.supplier;
  line.item = given.item.code;
  line.place = given.clinic.settings.main_place;
  line.quantity = order_quantity(given.item, needed);
  line.unit_cost = unit_cost_at(given.item, line.quantity);
  line.on_hand = given.position.on_hand;
  line.in_transit = given.position.in_transit;
  line.on_order = given.position.on_order;
  line.reserved = given.position.reserved;
  line.order_by = given.today;
  Reason& reason = line.reason;
  reason.patient_ordered = !given.item.stocked;
  reason.next_order_day = given.next_order_day;
  reason.lead_days = given.lead.mean_days();
  reason.lead_days_assumed = given.lead.assumed();
  reason.receipts_seen = given.lead.receipts();
  reason.protected_until = given.next_order_day + days{reason.lead_days};
  reason.service_target = given.wanted.chance;
  reason.target_from_costs = given.wanted.leftover.has_value();
  reason.uncounted = given.position.uncounted;
  reason.overdue = given.position.overdue;
  reason.booked = given.position.booked;
  reason.booked_until = given.booked_until;
  reason.booked_later = given.position.booked_later;
  reason.needed = needed;
  reason.least_quantity = line.quantity;
  reason.pack_size = given.item.pack_size;
  reason.min_order = given.item.min_order;
  return line;
}

ExpectedNeed need_of(const ItemCase& given, const wear::LifeOfUnit& life, double chance) {
  const Unit& unit = given.clinic.units[life.unit];
  return ExpectedNeed{unit.patient,
                      unit.side,
                      life.unit,
                      chance,
                      0,
                      life.life.worn_out_date(0.1),
                      life.life.worn_out_date(0.5),
                      std::nullopt};
}

}  // namespace sparewell::supply
