#include "desk/booking_use.hpp"

#include <algorithm>

namespace sparewell::desk {

std::vector<UsedBooking> use_bookings(store::UnitOfWork& work, const PatientRef& patient,
                                      const ItemCode& item, int pieces) {
  auto rows = work.all<Reservation>();
  std::ranges::stable_sort(
      rows, {}, [](const auto& row) { return row.record.needed_on.value_or(Date::max()); });
  std::vector<UsedBooking> used;
  for (const auto& row : rows) {
    auto booking = row.record;
    if (booking.patient != patient || booking.item != item) continue;
    const int taken = std::min(pieces - static_cast<int>(used.size()), booking.quantity);
    booking.quantity -= taken;
    used.insert(used.end(), static_cast<std::size_t>(taken), {booking.place, booking.needed_on});
    work.put_instead(row.id, booking);
  }
  return used;
}

void give_back_booking(store::UnitOfWork& work, const Handover& handover) {
  if (handover.booked_place.empty()) return;
  (void)add_to_booking(
      work, {handover.patient, handover.item, handover.booked_place, 1, handover.booked_on});
}

Reservation add_to_booking(store::UnitOfWork& work, const Reservation& pieces) {
  for (const auto& row : work.all<Reservation>()) {
    auto booking = row.record;
    if (booking.patient != pieces.patient || booking.item != pieces.item ||
        booking.place != pieces.place || booking.needed_on != pieces.needed_on) {
      continue;
    }
    booking.quantity += pieces.quantity;
    work.put_instead(row.id, booking);
    return booking;
  }
  work.put(pieces);
  return pieces;
}

}  // namespace sparewell::desk
