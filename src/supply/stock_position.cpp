#include "supply/stock_position.hpp"

#include <algorithm>
#include <tuple>

#include "supply/booked.hpp"

namespace sparewell::supply {

StockBook::StockBook(const Clinic& clinic) : clinic_{&clinic} {
  for (const StockLevel& level : clinic.shelf) {
    if (level.quantity > 0) items_[level.lot.item].shelf.push_back(&level);
  }
  for (const OrderLine& line : clinic.order_lines) {
    if (line.outstanding() > 0) items_[line.item].orders.push_back(&line);
  }
  for (const Reservation& reservation : clinic.reservations) {
    if (reservation.quantity > 0) items_[reservation.item].reservations.push_back(&reservation);
  }
}

StockPosition StockBook::position(const ItemCode& item, Date usable_until, Date overdue_before,
                                  Date booked_until) const {
  StockPosition made;
  const auto found = items_.find(item);
  if (found == items_.end()) return made;
  for (const StockLevel* level : found->second.shelf) {
    const auto sort = sort_of_place(clinic_->places, level->place);
    const bool counts = sort == PlaceSort::store || sort == PlaceSort::in_transit;
    const bool expires = level->lot.use_by && *level->lot.use_by < usable_until;
    if (!counts || expires) {
      made.uncounted.push_back({*level, sort == PlaceSort::quarantine, sort});
    } else if (sort == PlaceSort::in_transit) {
      made.in_transit += level->quantity;
    } else {
      made.on_hand += level->quantity;
    }
  }
  std::ranges::sort(made.uncounted, {}, [](const UncountedStock& stock) {
    return std::tie(stock.level.lot, stock.level.place, stock.level.quantity);
  });
  for (const OrderLine* line : found->second.orders) {
    made.on_order += line->outstanding();
    if (line->ordered_on < overdue_before) made.overdue += line->outstanding();
  }
  for (const Reservation* reservation : found->second.reservations) {
    if (!is_due(*reservation, booked_until)) {
      made.booked_later += reservation->quantity;
      continue;
    }
    made.reserved += reservation->quantity;
    if (reservation->needed_on) made.booked += reservation->quantity;
  }
  return made;
}

std::vector<const Reservation*> StockBook::reservations(const ItemCode& item) const {
  const auto found = items_.find(item);
  if (found == items_.end()) return {};
  auto made = found->second.reservations;
  std::ranges::sort(
      made, {}, [](const Reservation* r) { return std::tie(r->needed_on, r->patient, r->place); });
  return made;
}

}  // namespace sparewell::supply
