#include "supply/consideration.hpp"

#include <algorithm>
#include <tuple>
#include <unordered_map>

#include "clinic/in_parallel.hpp"
#include "supply/budget.hpp"
#include "supply/supplier_order.hpp"

namespace sparewell::supply {
namespace {

/// In the supplier's currency.
double value_in(const std::optional<ProposalLine>& line, const Currency& currency) {
  if (!line || !line->unit_cost || line->unit_cost->currency != currency) return 0;
  return static_cast<double>(line->unit_cost->minor) * line->quantity;
}

}  // namespace

Consideration::Consideration(OrderOutlook& outlook, const OrderPolicy& policy)
    : clinic_{outlook.clinic()},
      index_{outlook.index()},
      policy_{policy},
      items_(clinic_.items.size()) {
  in_parallel(items_.size(), [&](std::size_t i) {
    const Item& item = clinic_.items[i];
    ItemCase given = outlook.case_of(i, policy);
    if (item.stocked) {
      DemandAhead& demand = outlook.demand(i, given);
      items_[i].stocked.emplace(stocked_item(std::move(given), demand));
    } else {
      items_[i].for_patients = outlook.for_patients(i, given);
    }
    if (!policy.without.contains(item.supplier)) return;
    if (items_[i].stocked) items_[i].stocked->line.reset();
    items_[i].for_patients.reset();
  });
  join_orders();
}

void Consideration::join_orders() {
  std::unordered_map<SupplierName, std::vector<std::size_t>> of_supplier;
  for (std::size_t i = 0; i < items_.size(); ++i) {
    of_supplier[clinic_.items[i].supplier].push_back(i);
  }
  in_parallel(clinic_.suppliers.size(), [&](std::size_t s) {
    const Supplier& supplier = clinic_.suppliers[s];
    const auto found = of_supplier.find(supplier.name);
    if (found == of_supplier.end() || policy_.without.contains(supplier.name)) return;
    std::vector<StockedItem*> stocked;
    double others = 0;
    for (const std::size_t i : found->second) {
      if (items_[i].stocked) stocked.push_back(&*items_[i].stocked);
      others += value_in(items_[i].for_patients, supplier.currency);
    }
    std::ranges::sort(stocked, {}, [](const StockedItem* item) { return item->given.item.code; });
    join_order(supplier, stocked, others, policy_.costs);
  });
}

Proposal Consideration::proposal() {
  std::vector<WantedLine> wanted;
  for (Considered& item : items_) {
    if (item.stocked && item.stocked->line) {
      wanted.push_back({std::move(*item.stocked->line), std::move(item.stocked->needed)});
    } else if (item.for_patients) {
      wanted.push_back({std::move(*item.for_patients), std::nullopt});
    }
  }
  std::ranges::sort(wanted, {},
                    [](const WantedLine& w) { return std::tie(w.line.supplier, w.line.item); });
  return within_budget(std::move(wanted), index_, policy_.budget);
}

}  // namespace sparewell::supply
