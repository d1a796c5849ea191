#include "supply/policy.hpp"

#include <algorithm>

namespace sparewell::supply {

int order_quantity(const Item& item, int needed) {
  const int least = std::max(needed, item.min_order);
  const int pack = std::max(item.pack_size, 1);
  return (least + pack - 1) / pack * pack;
}

std::optional<Money> unit_cost_at(const Item& item, int quantity) {
  const PriceBreak* reached = nullptr;
  for (const PriceBreak& each : item.price_breaks) {
    if (each.from_quantity > quantity) continue;
    if (reached == nullptr || each.from_quantity > reached->from_quantity) reached = &each;
  }
  return reached == nullptr ? item.unit_cost : std::optional{reached->unit_cost};
}

}  // namespace sparewell::supply
