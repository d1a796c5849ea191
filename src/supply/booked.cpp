#include "supply/booked.hpp"

#include <algorithm>

#include "supply/patient_order.hpp"

namespace sparewell::supply {
namespace {

/// Those due, the soonest first.
std::vector<const Reservation*> due_in_order(std::vector<const Reservation*> bookings, Date until) {
  std::erase_if(bookings, [&](const Reservation* booking) { return !is_due(*booking, until); });
  std::ranges::stable_sort(bookings, {}, &Reservation::needed_on);
  return bookings;
}

/// The most worn first; those that do not wear, such as spares in a drawer, last.
Lives by_wear(Lives users) {
  std::ranges::stable_sort(users, {}, [](const wear::LifeOfUnit* user) {
    return user->life.worn_out_date(early_quantile).value_or(Date::max());
  });
  return users;
}

}  // namespace

bool is_due(const Reservation& booking, Date until) {
  return !booking.needed_on || *booking.needed_on <= until;
}

int pieces_due(const std::vector<const Reservation*>& bookings, Date until) {
  int pieces = 0;
  for (const Reservation* booking : bookings) {
    if (is_due(*booking, until)) pieces += booking->quantity;
  }
  return pieces;
}

std::vector<BookedUse> booked_uses(const Clinic& clinic, const Lives& users,
                                   const std::vector<const Reservation*>& bookings, Date until) {
  const auto due = due_in_order(bookings, until);
  std::vector<BookedUse> made;
  if (due.empty()) return made;
  const auto patient_of = [&](const wear::LifeOfUnit* user) -> const PatientRef& {
    return clinic.units[user->unit].patient;
  };
  Lives theirs;
  for (const auto* user : users) {
    if (std::ranges::any_of(due, [&](const Reservation* booking) {
          return booking->patient == patient_of(user);
        })) {
      theirs.push_back(user);
    }
  }
  theirs = by_wear(std::move(theirs));
  for (const Reservation* booking : due) {
    for (int piece = 0; piece < booking->quantity; ++piece) {
      const auto next = std::ranges::find(theirs, booking->patient, patient_of);
      if (next == theirs.end()) break;
      made.push_back({*next, booking->needed_on});
      theirs.erase(next);
    }
  }
  return made;
}

Lives left_to_chance(const Clinic& clinic, const Lives& users,
                     const std::vector<const Reservation*>& bookings, Date until) {
  const auto booked = booked_uses(clinic, users, bookings, until);
  Lives left = users;
  std::erase_if(left, [&](const wear::LifeOfUnit* user) {
    return std::ranges::find(booked, user, &BookedUse::unit) != booked.end();
  });
  return left;
}

}  // namespace sparewell::supply
