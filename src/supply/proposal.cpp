#include "supply/proposal.hpp"

#include <algorithm>
#include <tuple>
#include <unordered_map>

#include "clinic/in_parallel.hpp"
#include "supply/budget.hpp"
#include "supply/patient_order.hpp"
#include "supply/stocked_line.hpp"
#include "supply/supplier_order.hpp"

namespace sparewell::supply {

namespace {

/// One item's part of the proposal.
struct Considered {
  std::optional<StockedItem> stocked;
  std::optional<ProposalLine> for_patients;
};

/// In the supplier's currency.
double value_in(const std::optional<ProposalLine>& line, const Currency& currency) {
  if (!line || !line->unit_cost || line->unit_cost->currency != currency) return 0;
  return static_cast<double>(line->unit_cost->minor) * line->quantity;
}

void join_orders(const Clinic& clinic, std::vector<Considered>& items, const OrderCosts& costs) {
  std::unordered_map<SupplierName, std::vector<std::size_t>> of_supplier;
  for (std::size_t i = 0; i < items.size(); ++i) {
    of_supplier[clinic.items[i].supplier].push_back(i);
  }
  in_parallel(clinic.suppliers.size(), [&](std::size_t s) {
    const Supplier& supplier = clinic.suppliers[s];
    const auto found = of_supplier.find(supplier.name);
    if (found == of_supplier.end()) return;
    std::vector<StockedItem*> stocked;
    double others = 0;
    for (const std::size_t i : found->second) {
      if (items[i].stocked) stocked.push_back(&*items[i].stocked);
      others += value_in(items[i].for_patients, supplier.currency);
    }
    std::ranges::sort(stocked, {}, [](const StockedItem* item) { return item->given.item.code; });
    join_order(supplier, stocked, others, costs);
  });
}

}  // namespace

Proposal propose(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, Date today,
                 const OrderPolicy& policy) {
  const ClinicIndex index{clinic};
  const StockBook book{clinic};
  const LeadTimes lead_times{clinic};
  const ClinicDemand demand{clinic, lives, today};
  std::vector<Considered> items(clinic.items.size());
  in_parallel(clinic.items.size(), [&](std::size_t i) {
    const Item& item = clinic.items[i];
    ItemCase given = item_case(clinic, item, index.supplier(item.supplier), demand, book,
                               lead_times.of(item), policy);
    if (item.stocked) {
      items[i].stocked.emplace(stocked_item(std::move(given)));
    } else {
      items[i].for_patients = patient_order_line(given);
    }
  });
  join_orders(clinic, items, policy.costs);

  std::vector<WantedLine> wanted;
  for (Considered& item : items) {
    if (item.stocked && item.stocked->line) {
      wanted.push_back({std::move(*item.stocked->line), std::move(*item.stocked->needed)});
    } else if (item.for_patients) {
      wanted.push_back({std::move(*item.for_patients), std::nullopt});
    }
  }
  std::ranges::sort(wanted, {},
                    [](const WantedLine& w) { return std::tie(w.line.supplier, w.line.item); });
  return within_budget(std::move(wanted), index, policy.budget);
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
