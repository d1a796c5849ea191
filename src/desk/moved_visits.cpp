#include "desk/moved_visits.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/booking_rows.hpp"
#include "desk/booking_use.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// Takes all pieces off the booking; nothing when there are none any more.
bool take_off(store::UnitOfWork& work, const Reservation& booking) {
  for (const auto& row : work.all<Reservation>()) {
    if (row.record != booking) continue;
    auto none = booking;
    none.quantity = 0;
    work.put_instead(row.id, none);
    return true;
  }
  return false;
}

}  // namespace

std::vector<Reservation> booked_for_visits(const store::Snapshot& snapshot) {
  std::vector<Reservation> made;
  for (auto& row : snapshot.all<Reservation>()) {
    if (row.record.quantity <= 0 || !row.record.needed_on) continue;
    const auto patient = snapshot.patient(row.record.patient);
    if (patient && patient->record.next_visit == row.record.needed_on) {
      made.push_back(std::move(row.record));
    }
  }
  return made;
}

std::vector<std::string> follow_visits(store::UnitOfWork& work,
                                       const std::vector<Reservation>& booked, Date today) {
  std::vector<std::string> told;
  for (const Reservation& booking : booked) {
    const auto patient = work.patient(booking.patient);
    if (!patient || patient->record.next_visit == booking.needed_on) continue;
    const auto visit = patient->record.next_visit;
    const auto words = fmt::format("{}: {}", booking.patient.text, booking_words(booking));
    if (!visit || *visit < today) {
      told.push_back(
          say("{}: still booked, but that visit is no longer recorded; cancel "
              "the booking or book another day.",
              words));
      continue;
    }
    if (!take_off(work, booking)) continue;
    auto moved = booking;
    moved.needed_on = visit;
    add_to_booking(work, moved);
    told.push_back(
        say("{}: booked for {} now, the new day of the visit.", words, date_words(*visit)));
  }
  return told;
}

}  // namespace sparewell::desk
