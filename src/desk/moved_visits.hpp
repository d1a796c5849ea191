/// Bookings go along when the visit that they were made for is moved.
#pragma once

#include <string>
#include <vector>

#include "store/port.hpp"

namespace sparewell::desk {

/// Pieces that are booked for the day of the patient's next visit.
[[nodiscard]] std::vector<Reservation> booked_for_visits(const store::Snapshot& snapshot);

/// `booked` was booked for visits before patients changed. Books what is left of it for the new day
/// of the visit where that is today or later, added to what is booked for that day already. Returns
/// a sentence for each booking that moved, or whose visit is no longer recorded, so that somebody
/// has to look; patients are named by their reference. The caller commits.
std::vector<std::string> follow_visits(store::UnitOfWork& work,
                                       const std::vector<Reservation>& booked, Date today);

}  // namespace sparewell::desk
