#include "supply/order_size.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "supply/order_cost.hpp"
#include "supply/policy.hpp"

namespace sparewell::supply {
namespace {

constexpr double year_days = 365;

/// Quantities worth a look beside the least one.
std::vector<int> candidates(const Item& item, int least, double yearly, double line_cost,
                            double holding_rate) {
  std::vector<int> made;
  const auto add = [&](double quantity) {
    if (quantity > least && quantity < 1e6) {
      made.push_back(order_quantity(item, static_cast<int>(std::ceil(quantity))));
    }
  };
  const auto add_economic = [&](const std::optional<Money>& price) {
    if (!price || price->minor <= 0 || !(line_cost > 0) || !(holding_rate > 0)) return;
    const double quantity =
        economic_quantity(yearly, static_cast<double>(price->minor), line_cost, holding_rate);
    add(std::floor(quantity));
    add(quantity);
  };
  add_economic(item.unit_cost);
  for (const PriceBreak& each : item.price_breaks) {
    add(each.from_quantity);
    add_economic(each.unit_cost);
  }
  return made;
}

}  // namespace

OrderSize order_size(const Item& item, int needed, int position, double daily,
                     const OrderCosts& costs, const ChanceUsed& chance_used) {
  OrderSize size;
  size.least = order_quantity(item, needed);
  size.quantity = size.least;
  const auto unused = [&](int quantity) {
    return item.shelf_life_days ? 1 - chance_used(position + quantity) : 0.0;
  };
  const auto price = unit_cost_at(item, size.least);
  if (price && daily > 0) {
    const double yearly = daily * year_days;
    const bool same_currency = costs.line && costs.line->currency == price->currency;
    const double line_cost = same_currency ? static_cast<double>(costs.line->minor) : 0;
    const auto cost = [&](int quantity) {
      return yearly_cost(quantity, yearly, static_cast<double>(unit_cost_at(item, quantity)->minor),
                         line_cost, costs.holding_rate);
    };
    const double least_cost = cost(size.least);
    for (const int quantity : candidates(item, size.least, yearly, line_cost, costs.holding_rate)) {
      if (position + quantity > daily * most_days_ahead) continue;
      if (least_cost - cost(quantity) <= size.saves_a_year) continue;
      if (unused(quantity) > 1 - used_in_time) continue;
      size.quantity = quantity;
      size.saves_a_year = least_cost - cost(quantity);
    }
  }
  size.chance_expires = unused(size.quantity);
  return size;
}

}  // namespace sparewell::supply
