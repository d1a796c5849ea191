/// How much of an item to order at once when some must be ordered.
#pragma once

#include <functional>

#include "clinic/item.hpp"
#include "clinic/order_costs.hpp"

namespace sparewell::supply {

/// Pieces that are ordered beyond the need must be used before their use-by date with this chance
/// (our choice).
inline constexpr double used_in_time = 0.95;
/// Days of use beyond which nothing is ordered ahead, whatever the price (common practice, no
/// source).
inline constexpr double most_days_ahead = 365;

struct OrderSize {
  int quantity = 0;
  int least = 0;  ///< packs and minimum order alone
  /// What ordering so much more at a time saves in a year, in the currency's smallest unit.
  double saves_a_year = 0;
  /// Chance that not all of them are used before they expire; 0 for an item without a shelf life.
  double chance_expires = 0;
};

/// Chance that `pieces` of what will be there are used up while what is ordered now may be used.
using ChanceUsed = std::function<double(int pieces)>;

/// The quantity, at least what covers `needed` > 0 pieces, at which the cost a year is least: each
/// price break and the economic quantity of each price are tried, as far as they are at most
/// most_days_ahead of use and the chance to be used in time is at least used_in_time. `position` is
/// what is there and coming without it, `daily` the mean use a day.
[[nodiscard]] OrderSize order_size(const Item& item, int needed, int position, double daily,
                                   const OrderCosts& costs, const ChanceUsed& chance_used);

}  // namespace sparewell::supply
