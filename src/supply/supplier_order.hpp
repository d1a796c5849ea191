/// The lines of one supplier taken together: freight is paid once for all of them.
#pragma once

#include <vector>

#include "clinic/supplier.hpp"
#include "supply/stocked_line.hpp"

namespace sparewell::supply {

/// At most so many order days are covered by one order (our choice).
inline constexpr int most_order_days_covered = 8;

/// Order days that one order of the supplier should cover so that freight and keeping together cost
/// least: the joint replenishment interval of its items in whole order days, at least 1. 1 where
/// the supplier charges no freight, where an ordinary order reaches free freight anyway, and where
/// nothing is used.
[[nodiscard]] int order_days_to_cover(const Supplier& supplier,
                                      const std::vector<StockedItem*>& items,
                                      const OrderCosts& costs);

/// When something must be ordered from the supplier today: raises every item to what covers
/// order_days_to_cover, and adds pieces that will be used anyway where they bring the order to free
/// freight for less than the freight. `items` are the supplier's stocked items; `others` is the
/// value of its lines that are not among them, in its currency's smallest unit.
void join_order(const Supplier& supplier, const std::vector<StockedItem*>& items, double others,
                const OrderCosts& costs);

}  // namespace sparewell::supply
