#include "supply/supplier_order.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "supply/joint_replenishment.hpp"
#include "supply/policy.hpp"

namespace sparewell::supply {
namespace {

constexpr double year_days = 365;

bool priced_in(const Item& item, const Currency& currency) {
  return item.unit_cost && item.unit_cost->minor > 0 && item.unit_cost->currency == currency;
}

int days_between_orders(const StockedItem& item) {
  const Date first = item.given.next_order_day;
  return days_between(first, next_order_day(item.given.order_days, first));
}

/// In the currency's smallest unit.
double value_of(const std::vector<StockedItem*>& items) {
  double value = 0;
  for (const StockedItem* item : items) {
    if (!item->line || !item->line->unit_cost) continue;
    value += static_cast<double>(item->line->unit_cost->minor) * item->line->quantity;
  }
  return value;
}

void cover_order_days(const std::vector<StockedItem*>& items, int count) {
  for (StockedItem* item : items) {
    Date last = item->given.next_order_day;
    for (int i = 1; i < count; ++i) last = next_order_day(item->given.order_days, last);
    raise_to(*item, last, count);
  }
}

/// One more pack of an item, or its first order.
struct Addition {
  StockedItem* item = nullptr;
  int pieces = 0;
  double value = 0;
  double keeping = 0;  ///< until they are used
};

std::optional<Addition> addition_to(StockedItem& item, const Currency& currency,
                                    const OrderCosts& costs) {
  const Item& of = item.given.item;
  if (!priced_in(of, currency) || !(item.daily > 0)) return std::nullopt;
  const int ordered = item.line ? item.line->quantity : 0;
  const int pieces = ordered > 0 ? std::max(of.pack_size, 1) : order_quantity(of, 1);
  const int before = item.given.position.total() + ordered;
  const double price = static_cast<double>(unit_cost_at(of, ordered + pieces)->minor);
  const double first = std::max(before, 0) + 1;
  const double last = std::max(before, 0) + pieces;
  if (last > item.daily * most_days_ahead) return std::nullopt;
  if (of.shelf_life_days && chance_used(item, before + pieces) < used_in_time) return std::nullopt;
  const double days_kept = (first + last) / 2 / item.daily;
  return Addition{&item, pieces, price * pieces,
                  costs.holding_rate * price * pieces * days_kept / year_days};
}

void top_up(const Supplier& supplier, const std::vector<StockedItem*>& items, double others,
            const OrderCosts& costs) {
  if (!supplier.free_freight_from || supplier.free_freight_from->currency != supplier.currency) {
    return;
  }
  const double wanted = static_cast<double>(supplier.free_freight_from->minor) - others;
  const double freight = static_cast<double>(supplier.freight->minor);
  std::vector<std::optional<ProposalLine>> before;
  for (const StockedItem* item : items) before.push_back(item->line);
  double keeping = 0;
  while (value_of(items) < wanted && keeping < freight) {
    std::optional<Addition> best;
    for (StockedItem* item : items) {
      const auto addition = addition_to(*item, supplier.currency, costs);
      if (addition &&
          (!best || addition->keeping * best->value < best->keeping * addition->value)) {
        best = addition;
      }
    }
    if (!best) break;
    keeping += best->keeping;
    add_pieces(*best->item, best->pieces);
  }
  if (value_of(items) >= wanted && keeping < freight) return;
  for (std::size_t i = 0; i < items.size(); ++i) items[i]->line = before[i];
}

}  // namespace

int order_days_to_cover(const Supplier& supplier, const std::vector<StockedItem*>& items,
                        const OrderCosts& costs) {
  if (!supplier.freight || supplier.freight->minor <= 0 || items.empty()) return 1;
  std::vector<JointItem> joint;
  double daily_value = 0;
  for (const StockedItem* item : items) {
    const Item& of = item->given.item;
    if (!priced_in(of, supplier.freight->currency) || !(item->daily > 0)) continue;
    const auto price = static_cast<double>(of.unit_cost->minor);
    const bool counts = costs.line && costs.line->currency == supplier.freight->currency;
    joint.push_back({counts ? static_cast<double>(costs.line->minor) : 0,
                     price * costs.holding_rate / year_days, item->daily});
    daily_value += price * item->daily;
  }
  if (joint.empty() || !(costs.holding_rate > 0)) return 1;
  const int review = std::max(1, days_between_orders(*items.front()));
  const bool free_anyway =
      supplier.free_freight_from &&
      daily_value * review >= static_cast<double>(supplier.free_freight_from->minor);
  if (free_anyway) return 1;
  const double interval =
      joint_replenishment(static_cast<double>(supplier.freight->minor), joint).interval;
  return std::clamp(static_cast<int>(std::lround(interval / review)), 1, most_order_days_covered);
}

void join_order(const Supplier& supplier, const std::vector<StockedItem*>& items, double others,
                const OrderCosts& costs) {
  const bool ordering = others > 0 || std::ranges::any_of(items, [](const StockedItem* i) {
                          return i->line.has_value();
                        });
  if (!ordering || !supplier.freight || supplier.freight->minor <= 0) return;
  const int count = order_days_to_cover(supplier, items, costs);
  if (count > 1) cover_order_days(items, count);
  top_up(supplier, items, others, costs);
}

}  // namespace sparewell::supply
