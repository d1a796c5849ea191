#include "supply/budget.hpp"

#include <algorithm>

#include "supply/marginal_value.hpp"
#include "supply/policy.hpp"

namespace sparewell::supply {
namespace {

/// Pieces needed of a line that is ordered for patients.
Pmf needed_by_patients(const Reason& reason) {
  std::vector<Pmf> needs;
  for (std::size_t i = 0; i < reason.reserved_for.size(); ++i) needs.push_back(binomial(1, 1));
  for (const ExpectedNeed& need : reason.needs) needs.push_back(binomial(1, need.chance));
  return convolve_all(std::move(needs));
}

bool limited_by(const Money& budget, const ProposalLine& line) {
  return line.unit_cost && line.unit_cost->minor > 0 && line.unit_cost->currency == budget.currency;
}

/// One line as a purchase; `needed` must outlive it.
Purchase purchase_of(const ProposalLine& line, const Pmf& needed, const Item* item) {
  Purchase purchase;
  purchase.demand = &needed;
  purchase.position = line.reason.patient_ordered
                          ? 0
                          : line.on_hand + line.in_transit + line.on_order - line.reserved;
  purchase.unit_cost = static_cast<double>(line.unit_cost->minor);
  purchase.first = item == nullptr ? 1 : order_quantity(*item, 1);
  purchase.step = item == nullptr ? 1 : std::max(item->pack_size, 1);
  purchase.most = line.quantity;
  return purchase;
}

void cut_to(ProposalLine& line, int pieces, const Item* item) {
  line.reason.left_out_for_budget = line.quantity - pieces;
  line.quantity = pieces;
  if (item != nullptr) line.unit_cost = unit_cost_at(*item, pieces);
}

}  // namespace

Proposal within_budget(std::vector<WantedLine> wanted, const ClinicIndex& index,
                       const std::optional<Money>& budget) {
  Proposal made;
  std::vector<std::size_t> limited;
  std::vector<Purchase> purchases;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    ProposalLine& line = wanted[i].line;
    if (!budget || !limited_by(*budget, line)) continue;
    if (!wanted[i].needed) wanted[i].needed = needed_by_patients(line.reason);
    limited.push_back(i);
    purchases.push_back(purchase_of(line, *wanted[i].needed, index.item(line.item)));
  }
  const auto bought = spend(budget ? static_cast<double>(budget->minor) : 0, purchases);
  for (std::size_t i = 0, next = 0; i < wanted.size(); ++i) {
    ProposalLine& line = wanted[i].line;
    if (next < limited.size() && limited[next] == i) {
      const int pieces = bought.pieces[next++];
      if (pieces == 0) {
        made.held.push_back({std::move(line), HeldFor::budget});
        continue;
      }
      if (pieces < line.quantity) cut_to(line, pieces, index.item(line.item));
    }
    made.lines.push_back(std::move(line));
  }
  return made;
}

}  // namespace sparewell::supply
