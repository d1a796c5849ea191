/// Parts booked for a patient's visit: certain need, kept as reservations.
#pragma once

#include <optional>
#include <string>

#include "desk/issue_check.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

struct BookingRequest {
  std::string patient;
  std::optional<Side> side;  ///< empty: the side that the records leave no doubt about
  std::string item;
  int quantity = 1;
  std::optional<Date> on;   ///< empty: the patient's next visit
  std::string place;        ///< where it will be handed over; "" for the clinic's main place
  std::string reason;       ///< for the change log; may be empty
  std::string override_by;  ///< the clinician who decides although something stops it
  std::string override_because;
};

struct BookingOutcome {
  IssueCheck check;  ///< question.day is the day booked for
  bool recorded = false;
  Reservation booking;  ///< with all pieces that are booked for that day now
};

/// What the checks before an issue say of the patient and the item, without a piece: sensitivities,
/// size, thread and chain, as of that day. Refuses what cannot be booked: an unknown patient, item
/// or place, no day or one that has passed, and a side that the records leave open.
[[nodiscard]] Expected<IssueCheck> check_booking(const store::Snapshot& snapshot,
                                                 const BookingRequest& request, Date today);

/// Books the pieces in one unit of work, added to what is booked for the same patient, item, place
/// and day; or nothing where a finding stops it and no clinician is named with a reason. Throws
/// store::StoreFailure.
[[nodiscard]] Expected<BookingOutcome> book_pieces(store::Store& store,
                                                   const BookingRequest& request, Date today,
                                                   const std::string& who);

/// Which booking is meant; empty fields leave it open.
struct BookingChoice {
  std::string patient;
  std::string item;
  std::optional<Date> on;
  bool without_day = false;  ///< the one that has no day
  std::string place;
  int quantity = 0;  ///< pieces that are not needed any more; 0: all
};

struct CancelledBooking {
  Reservation booking;  ///< as it is now
  int pieces = 0;       ///< cancelled
};

/// Takes the pieces off in a unit of work that the caller opens and commits. Refuses when there is
/// no such booking, when several answer, and when it has fewer pieces.
[[nodiscard]] Expected<CancelledBooking> cancel_booking(store::UnitOfWork& work,
                                                        const BookingChoice& choice);

/// "1 piece of L1 for 3 Dec 2026 is no longer booked for P-1; 2 pieces still are."
[[nodiscard]] std::string cancelled_words(const CancelledBooking& cancelled);

}  // namespace sparewell::desk
