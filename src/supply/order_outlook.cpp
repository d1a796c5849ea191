#include "supply/order_outlook.hpp"

#include <algorithm>
#include <stdexcept>

#include "supply/booked.hpp"
#include "supply/patient_order.hpp"

namespace sparewell::supply {

OrderOutlook::OrderOutlook(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                           Date today, std::optional<Date> order_on)
    : clinic_{clinic},
      order_on_{std::max(today, order_on.value_or(today))},
      index_{clinic},
      book_{clinic},
      lead_times_{clinic},
      demand_{clinic, lives, today},
      items_(clinic.items.size()) {
  take_out_booked();
}

void OrderOutlook::take_out_booked() {
  OrderPolicy policy;  // only its day matters here
  policy.order_on = order_on_;
  for (std::size_t i = 0; i < clinic_.items.size(); ++i) {
    const Item& item = clinic_.items[i];
    const auto bookings = book_.reservations(item.code);
    if (bookings.empty()) continue;
    const ItemCase given = case_of(i, policy);
    demand_.leave_to_chance(item.code,
                            left_to_chance(clinic_, given.lives, bookings, given.booked_until));
  }
}

ItemCase OrderOutlook::case_of(std::size_t item, const OrderPolicy& policy) const {
  if (std::max(today(), policy.order_on.value_or(today())) != order_on_) {
    throw std::invalid_argument("the policy orders on another day than this outlook");
  }
  const Item& of = clinic_.items[item];
  return item_case(clinic_, of, index_.supplier(of.supplier), demand_, book_, lead_times_.of(of),
                   policy);
}

DemandAhead& OrderOutlook::demand(std::size_t item, const ItemCase& given) {
  auto& made = items_[item].demand;
  if (!made) {
    made = std::make_unique<DemandAhead>(demand_of(given), given.today, given.order_on,
                                         given.next_order_day, given.lead);
  }
  return *made;
}

std::optional<ProposalLine> OrderOutlook::for_patients(std::size_t item, const ItemCase& given) {
  OfItem& of = items_[item];
  if (!of.looked_at) of.for_patients = patient_order_line(given);
  of.looked_at = true;
  auto line = of.for_patients;
  if (line) {
    line->reason.service_target = given.wanted.chance;
    line->reason.target_from_costs = given.wanted.leftover.has_value();
  }
  return line;
}

}  // namespace sparewell::supply
