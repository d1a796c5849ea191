/// How many to order and what they cost: packs, minimum orders, price breaks.
#pragma once

#include <optional>

#include "clinic/item.hpp"

namespace sparewell::supply {

/// The least quantity that covers `needed` pieces, is at least the item's minimum order and is a
/// whole number of packs. `needed` > 0.
[[nodiscard]] int order_quantity(const Item& item, int needed);

/// The cost of one piece when `quantity` are ordered: of the price break with the largest
/// from_quantity that is reached, otherwise the catalogue's. Empty when the catalogue gives none.
[[nodiscard]] std::optional<Money> unit_cost_at(const Item& item, int quantity);

}  // namespace sparewell::supply
