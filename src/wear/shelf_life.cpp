#include "wear/shelf_life.hpp"

#include <algorithm>

namespace sparewell::wear {

UseBys::UseBys(const Clinic& clinic) {
  for (const StockLevel& level : clinic.shelf) {
    if (!level.lot.use_by || level.lot.lot.empty()) continue;
    const auto [at, added] =
        lots_.try_emplace({level.lot.item, level.lot.lot}, *level.lot.use_by);
    if (!added) at->second = std::min(at->second, *level.lot.use_by);
  }
}

std::optional<UseBy> UseBys::of(const Unit& unit, const Item& item) const {
  const auto lot = lots_.find({unit.item, unit.lot});
  if (lot != lots_.end()) return UseBy{lot->second, false};
  if (!item.shelf_life_days) return std::nullopt;
  return UseBy{unit.issued_on + days{*item.shelf_life_days}, true};
}

}  // namespace sparewell::wear
