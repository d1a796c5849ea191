#include "supply/proposal.hpp"

#include "supply/booked.hpp"
#include "supply/consideration.hpp"

namespace sparewell::supply {

Proposal propose(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, Date today,
                 const OrderPolicy& policy) {
  OrderOutlook outlook{clinic, lives, today, policy.order_on};
  return Consideration{outlook, policy}.proposal();
}

std::vector<ProposalLine> propose(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                                  Date today) {
  return propose(clinic, lives, today, policy_of(clinic.settings)).lines;
}

Pmf demand(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, const ItemCode& item,
           Date today, int days_ahead) {
  const ClinicIndex index{clinic};
  const Item* known = index.item(item);
  if (known == nullptr) return Pmf{};
  const Date until = today + days{days_ahead};
  ClinicDemand demand{clinic, lives, today};
  const auto bookings = StockBook{clinic}.reservations(item);
  demand.leave_to_chance(item, left_to_chance(clinic, demand.users(item), bookings, until));
  const int booked = pieces_due(bookings, until);
  Pmf by_chance = demand.of(*known).until(until);
  return booked == 0 ? by_chance : convolve(binomial(booked, 1), by_chance);
}

}  // namespace sparewell::supply
