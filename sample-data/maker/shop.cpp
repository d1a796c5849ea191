#include "shop.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "calendar.hpp"
#include "truth.hpp"

namespace sparewell::sample {
namespace {

constexpr std::uint64_t shop_stream = 1ULL << 40U;

/// Days between two orders to a supplier, roughly.
double cycle_days(const Supplier& supplier) {
  if (supplier.order_days.every_days > 0) return supplier.order_days.every_days;
  return supplier.order_days.weekdays == 0 ? 1.5 : 4.0;
}

/// Prices rise by about 3 % a year up to those of the catalogue.
Money price_on(const Item& item, int quantity, Date day, Date until) {
  Money price = *item.unit_cost;
  for (const auto& price_break : item.price_breaks) {
    if (quantity >= price_break.from_quantity) price = price_break.unit_cost;
  }
  for (int year = year_of(day); year < year_of(until); ++year) price.minor = price.minor * 97 / 100;
  return price;
}

bool is_usable(const StockLevel& level, Date today) {
  return level.quantity > 0 && !is_quarantine(level.place) &&
         (!level.lot.use_by || *level.lot.use_by > today);
}

int rounded_up(int quantity, int step) {
  return (quantity + step - 1) / step * step;
}

}  // namespace

Shop::Shop(const Catalogue& catalogue, std::uint64_t seed, Date from, Date until)
    : catalogue_{catalogue},
      random_{seed, shop_stream},
      from_{from},
      until_{until},
      stock_(catalogue.items.size()) {
  for (std::size_t i = 0; i < stock_.size(); ++i) {
    const Item& item = catalogue.items[i];
    stock_[i].used_a_day = 1.25 / (0.886 * law_of(item.kind, item.material).scale_days);
  }
}

void Shop::open_with(std::size_t item, int quantity) {
  const Date ordered = working_day_from(from_ - days{40});
  const Item& what = catalogue_.items[item];
  const int packs = rounded_up(std::max(quantity, what.min_order), what.pack_size);
  order(item, packs, take_reference(ordered), ordered);
}

void Shop::receive(Date today) {
  for (auto next = deliveries_.begin(); next != deliveries_.end() && next->first <= today;) {
    const Delivery& delivery = next->second;
    OrderLine& line = orders_[delivery.line];
    line.received_on = today;
    line.received_quantity += delivery.quantity;
    stock_[delivery.item].on_order -= delivery.quantity;
    put_on_shelf(delivery.item, delivery.quantity, today);
    next = deliveries_.erase(next);
  }
}

void Shop::put_on_shelf(std::size_t item, int quantity, Date today) {
  Lot lot;
  lot.item = catalogue_.items[item].code;
  const int letter = random_.whole(0, 23);
  lot.lot = fmt::format("{}{:02}{:05}", static_cast<char>('A' + letter), year_of(today) % 100,
                        ++lots_made_);
  if (const auto& life = catalogue_.items[item].shelf_life_days) {
    lot.use_by = today + days{*life - random_.whole(20, 200)};
  }
  const bool shared = quantity >= 3 && random_.chance(0.3);
  const int to_branch = shared ? quantity / 3 : 0;
  stock_[item].levels.push_back({lot, main_place, quantity - to_branch});
  if (to_branch > 0) stock_[item].levels.push_back({lot, branch_place, to_branch});
}

std::optional<Lot> Shop::take(std::size_t item, Date today) {
  auto& levels = stock_[item].levels;
  StockLevel* best = nullptr;
  for (auto& level : levels) {
    if (!is_usable(level, today)) continue;
    if (best == nullptr || level.lot.use_by < best->lot.use_by) best = &level;
  }
  if (best == nullptr) return std::nullopt;
  const Lot taken = best->lot;
  --best->quantity;
  std::erase_if(levels, [](const StockLevel& level) { return level.quantity == 0; });
  return taken;
}

bool Shop::orders_today(std::size_t supplier, Date today) const {
  // Who orders from the first supplier has been away for the last days.
  if (supplier == 0 && today > until_ - days{9}) return false;
  const OrderDays& order_days = catalogue_.suppliers[supplier].order_days;
  if (order_days.every_days > 0) return days_between(from_, today) % order_days.every_days == 1;
  return is_order_day(order_days, today);
}

int Shop::wanted(std::size_t item, double cycle, Date today) const {
  const Item& what = catalogue_.items[item];
  const Stock& stock = stock_[item];
  int on_hand = 0;
  for (const auto& level : stock.levels) {
    if (is_usable(level, today)) on_hand += level.quantity;
  }
  const int position = on_hand + stock.on_order - stock.waiting;
  if (!what.stocked) return std::max(0, -position);
  const double daily = stock.worn * stock.used_a_day;
  const double mean = daily * (cycle + what.lead_days.value_or(20));
  const int least = static_cast<int>(std::ceil(mean + 1.1 * std::sqrt(mean)));
  if (position >= std::max(least, 0) || (position >= 0 && daily < 0.0015)) return 0;
  const int missing = least + static_cast<int>(std::ceil(21 * daily)) - position;
  return rounded_up(std::max(missing, what.min_order), what.pack_size);
}

std::string Shop::take_reference(Date today) {
  return fmt::format("PO-{:02}-{:04}", year_of(today) % 100, ++orders_made_);
}

void Shop::place_orders(Date today) {
  for (std::size_t supplier = 0; supplier < catalogue_.suppliers.size(); ++supplier) {
    if (!orders_today(supplier, today)) continue;
    const Supplier& from = catalogue_.suppliers[supplier];
    std::string reference;
    for (std::size_t item = 0; item < stock_.size(); ++item) {
      if (catalogue_.items[item].supplier != from.name) continue;
      const int quantity = wanted(item, cycle_days(from), today);
      if (quantity == 0) continue;
      if (reference.empty()) reference = take_reference(today);
      order(item, quantity, reference, today);
    }
  }
}

void Shop::order(std::size_t item, int quantity, const std::string& reference, Date today) {
  const Item& what = catalogue_.items[item];
  OrderLine line;
  line.supplier = what.supplier;
  line.order_ref = reference;
  line.item = what.code;
  line.ordered_on = today;
  line.quantity = quantity;
  line.unit_cost = price_on(what, quantity, today, until_);
  orders_.push_back(line);
  stock_[item].on_order += quantity;
  plan_delivery(orders_.size() - 1, item, today);
}

void Shop::plan_delivery(std::size_t line, std::size_t item, Date today) {
  const int quantity = orders_[line].quantity;
  const double quoted = catalogue_.items[item].lead_days.value_or(24);
  const double real = quoted * (0.75 + 0.1 * random_.gamma(3.5));
  const Date first = working_day_from(today + days{std::max(1, static_cast<int>(real + 0.5))});
  if (quantity < 2 || !random_.chance(0.08)) {
    deliveries_.emplace(first, Delivery{line, item, quantity});
    return;
  }
  const int now = random_.whole(1, quantity - 1);
  deliveries_.emplace(first, Delivery{line, item, now});
  const Date rest = working_day_from(first + days{random_.whole(7, 45)});
  deliveries_.emplace(rest, Delivery{line, item, quantity - now});
}

void Shop::quarantine(std::size_t item, const std::string& lot) {
  for (auto& level : stock_[item].levels) {
    if (level.lot.lot == lot) level.place = quarantine_place;
  }
}

std::vector<StockLevel> Shop::shelf() const {
  std::vector<StockLevel> all;
  for (const auto& stock : stock_) {
    all.insert(all.end(), stock.levels.begin(), stock.levels.end());
  }
  return all;
}

}  // namespace sparewell::sample
