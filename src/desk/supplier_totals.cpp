#include "desk/supplier_totals.hpp"

#include <algorithm>

namespace sparewell::desk {
namespace {

/// Goods in the currency of the supplier's freight, as far as they are priced.
void work_out_freight(SupplierTotal& total, const Supplier& supplier) {
  if (!supplier.freight) return;
  total.freight = supplier.freight;
  if (!supplier.free_freight_from) return;
  Money goods{0, supplier.free_freight_from->currency};
  for (const auto& amount : total.goods) {
    if (amount.currency == goods.currency) goods = amount;
  }
  if (goods >= *supplier.free_freight_from) {
    total.freight = Money{0, supplier.freight->currency};
  } else {
    total.short_of_free_freight =
        Money{supplier.free_freight_from->minor - goods.minor, goods.currency};
  }
}

}  // namespace

void add_amount(std::vector<Money>& amounts, const Money& amount) {
  const auto same = std::ranges::find(amounts, amount.currency, &Money::currency);
  if (same == amounts.end()) {
    amounts.push_back(amount);
  } else {
    *same = *same + amount;
  }
}

std::vector<SupplierTotal> supplier_totals(const Day& day) {
  std::vector<SupplierTotal> totals;
  for (const auto& line : day.assessment().proposal) {
    auto total = std::ranges::find(totals, line.supplier, &SupplierTotal::supplier);
    if (total == totals.end()) {
      totals.emplace_back().supplier = line.supplier;
      total = totals.end() - 1;
    }
    ++total->lines;
    total->pieces += line.quantity;
    if (line.unit_cost) {
      add_amount(total->goods, *line.unit_cost * line.quantity);
    } else {
      ++total->lines_without_price;
    }
  }
  for (auto& total : totals) {
    if (const auto* supplier = day.index().supplier(total.supplier)) {
      work_out_freight(total, *supplier);
    }
  }
  return totals;
}

}  // namespace sparewell::desk
