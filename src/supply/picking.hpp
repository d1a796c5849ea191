/// Which lots to take from the shelf.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "clinic/place.hpp"
#include "clinic/stock.hpp"

namespace sparewell::supply {

struct Picking {
  std::vector<StockLevel> lots;  ///< what to take, in this order; quantity is the pieces to take
  int missing = 0;               ///< pieces wanted beyond what is usable there
  int expired = 0;               ///< pieces that lie there and are past their use-by date
  int held_back = 0;             ///< pieces in quarantine, where these were asked for
};

/// First expiry, first out: the lot that must be used first comes first, lots without a use-by date
/// last, alike ones by lot number and place. A piece may be used on its use-by date, not after.
/// `levels` are those of one item; `place` is "" for every store. Only stores are picked from.
[[nodiscard]] Picking first_expiry_first_out(std::span<const StockLevel> levels, int quantity,
                                             Date day, const std::string& place,
                                             std::span<const Place> places = {});

}  // namespace sparewell::supply
