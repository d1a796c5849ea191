/// Booked pieces that are handed over, and given back when that was a mistake.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "store/port.hpp"

namespace sparewell::desk {

/// The booking that one handed-over piece used up.
struct UsedBooking {
  std::string place;
  std::optional<Date> needed_on;
};

/// Uses up to `pieces` booked pieces of the patient, those needed first before others and those
/// without a day last. One entry for each piece used.
std::vector<UsedBooking> use_bookings(store::UnitOfWork& work, const PatientRef& patient,
                                      const ItemCode& item, int pieces);

/// Books the piece again that the handover used up; nothing when it used none.
void give_back_booking(store::UnitOfWork& work, const Handover& handover);

/// Adds the pieces to the booking of the same patient, item, place and day, or makes one. Returns
/// it as it is now.
Reservation add_to_booking(store::UnitOfWork& work, const Reservation& pieces);

}  // namespace sparewell::desk
