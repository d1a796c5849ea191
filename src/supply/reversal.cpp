#include "supply/reversal.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace sparewell::supply {

tl::expected<std::vector<StockMovement>, StockLevel> reverse(
    const std::vector<StockMovement>& booked, const std::vector<StockLevel>& levels, Date on,
    const std::string& reason) {
  std::map<std::pair<Lot, std::string>, int> there;
  for (const auto& level : levels) there[{level.lot, level.place}] += level.quantity;
  std::vector<StockMovement> made(booked.rbegin(), booked.rend());
  // What goes in goes first, so that no level falls below zero on the way.
  std::ranges::stable_partition(made, [](const StockMovement& m) { return m.quantity < 0; });
  for (auto& movement : made) {
    movement.quantity = -movement.quantity;
    movement.on = on;
    movement.reason = reason;
    auto& level = there[{movement.lot, movement.place}];
    level += movement.quantity;
    if (level < 0) {
      return tl::unexpected{StockLevel{movement.lot, movement.place, level - movement.quantity}};
    }
  }
  return made;
}

}  // namespace sparewell::supply
