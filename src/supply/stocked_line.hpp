/// Periodic review, order-up-to, for items kept in stock.
#pragma once

#include <optional>

#include "supply/demand_ahead.hpp"
#include "supply/item_case.hpp"
#include "supply/order_size.hpp"

namespace sparewell::supply {

/// A need below this chance is left out of a line's reason.
inline constexpr double least_named_chance = 0.005;
/// The most needs that a stocked line's reason names.
inline constexpr std::size_t most_named_needs = 20;

/// A stocked item with what is to be ordered of it today. Refers to its demand.
struct StockedItem {
  ItemCase given;
  DemandAhead& demand;
  double daily = 0;  ///< mean use a day in the near future
  /// Until what is ordered on the next order day has arrived; empty where the position reaches the
  /// target even for the longest lead time.
  std::optional<Pmf> needed;
  std::optional<ProposalLine> line;
};

/// The stock must last from today until what is ordered on the next order day has arrived: the
/// target is the least s with P(demand in that interval <= s) >= the wanted chance (order-up-to
/// level of periodic review; "Fundamentals of Supply Chain Theory", 2nd ed. 2019, section 4.3,
/// with the interval's end random). There is no line when the position reaches the target.
/// Otherwise as much is ordered as order_size says.
[[nodiscard]] StockedItem stocked_item(ItemCase given, DemandAhead& demand);

/// Chance that `pieces`, those there and coming first, are used up while what is ordered today may
/// be used; 1 for an item without a shelf life.
[[nodiscard]] double chance_used(StockedItem& item, int pieces);

/// Raises the line, or makes one, so that the stock lasts until what is ordered on `last_order_day`
/// has arrived, which is the `count`-th order day from now on.
void raise_to(StockedItem& item, Date last_order_day, int count);

/// Adds pieces for free freight to the line, or makes one for them.
void add_pieces(StockedItem& item, int pieces);

}  // namespace sparewell::supply
