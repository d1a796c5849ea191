#include "supply/proposal.hpp"

#include "supply/consideration.hpp"

namespace sparewell::supply {

Proposal propose(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, Date today,
                 const OrderPolicy& policy) {
  return Consideration{clinic, lives, today, policy}.proposal();
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
  return ClinicDemand{clinic, lives, today}.of(*known).until(today + days{days_ahead});
}

}  // namespace sparewell::supply
