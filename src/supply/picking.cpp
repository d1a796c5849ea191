#include "supply/picking.hpp"

#include <algorithm>
#include <tuple>

namespace sparewell::supply {
namespace {

bool used_before(const StockLevel& a, const StockLevel& b) {
  const auto a_use_by = a.lot.use_by.value_or(Date::max());
  const auto b_use_by = b.lot.use_by.value_or(Date::max());
  return std::tie(a_use_by, a.lot.lot, a.place) < std::tie(b_use_by, b.lot.lot, b.place);
}

}  // namespace

Picking first_expiry_first_out(std::span<const StockLevel> levels, int quantity, Date day,
                               const std::string& place, std::span<const Place> places) {
  Picking made;
  std::vector<StockLevel> usable;
  for (const StockLevel& level : levels) {
    if (level.quantity <= 0 || (!place.empty() && level.place != place)) continue;
    const auto sort = sort_of_place(places, level.place);
    if (sort == PlaceSort::quarantine) made.held_back += level.quantity;
    if (sort != PlaceSort::store) continue;
    if (level.lot.use_by && *level.lot.use_by < day) {
      made.expired += level.quantity;
    } else {
      usable.push_back(level);
    }
  }
  std::ranges::sort(usable, used_before);
  made.missing = std::max(quantity, 0);
  for (StockLevel& level : usable) {
    if (made.missing == 0) break;
    level.quantity = std::min(level.quantity, made.missing);
    made.missing -= level.quantity;
    made.lots.push_back(std::move(level));
  }
  return made;
}

}  // namespace sparewell::supply
