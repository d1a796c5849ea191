/// Pieces that are booked for patients: certain need, which leaves less to chance.
#pragma once

#include <optional>
#include <vector>

#include "clinic/clinic.hpp"
#include "supply/demand.hpp"

namespace sparewell::supply {

/// Whether the piece is needed by `until`: one without a day is promised already, and a day that
/// has passed is that of a visit which is overdue.
[[nodiscard]] bool is_due(const Reservation& booking, Date until);

/// Pieces of such bookings that are due by then.
[[nodiscard]] int pieces_due(const std::vector<const Reservation*>& bookings, Date until);

/// A unit that is replaced by a booked piece.
struct BookedUse {
  const wear::LifeOfUnit* unit = nullptr;
  std::optional<Date> on;  ///< empty: without a day
};

/// Which of `users`, the units of one item in use, the bookings of that item due by `until` speak
/// for: each piece for one unit of its patient, the soonest piece for the most worn unit, which is
/// the one that is worn out first with a chance of 10 %. Pieces beyond the patient's units, such as
/// those of an item that the patient does not use yet, speak for none.
[[nodiscard]] std::vector<BookedUse> booked_uses(const Clinic& clinic, const Lives& users,
                                                 const std::vector<const Reservation*>& bookings,
                                                 Date until);

/// The users without those: the bookings are certain need, so that what these units need must not
/// be counted a second time. What comes after a booked piece within the interval is left out; it is
/// new then.
[[nodiscard]] Lives left_to_chance(const Clinic& clinic, const Lives& users,
                                   const std::vector<const Reservation*>& bookings, Date until);

}  // namespace sparewell::supply
