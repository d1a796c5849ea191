#include "desk/visit_booking.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/booking_rows.hpp"
#include "desk/booking_use.hpp"
#include "desk/issuing.hpp"
#include "desk/stock_list.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

Expected<Date> day_of(const Patient& patient, const std::optional<Date>& on, Date today) {
  if (on && *on < today) {
    return refuse(say("{} has passed; book for today or a later day.", iso_text(*on)));
  }
  if (on) return *on;
  if (!patient.next_visit) {
    return refuse(say("No next visit of {} is recorded; say the day on which it is needed.",
                      patient.ref.text));
  }
  if (*patient.next_visit < today) {
    return refuse(
        say("The visit of {} that is recorded, {}, has passed; say the day on which it is needed.",
            patient.ref.text, iso_text(*patient.next_visit)));
  }
  return *patient.next_visit;
}

/// The one side on which the patient has the item in use, or else wears a prosthesis on that day.
Expected<Side> side_of(const Clinic& clinic, const PatientRef& patient, const ItemCode& item,
                       Date day) {
  std::vector<Side> sides;
  const auto add = [&](Side side) {
    if (std::ranges::find(sides, side) == sides.end()) sides.push_back(side);
  };
  for (const Unit& unit : clinic.units) {
    if (unit.patient == patient && unit.item == item && unit.in_use_on(day)) add(unit.side);
  }
  if (sides.size() == 1) return sides.front();
  for (const Prosthesis& worn : clinic.prostheses) {
    if (worn.patient != patient || worn.delivered_on > day) continue;
    if (!worn.ended_on || *worn.ended_on > day) add(worn.side);
  }
  if (sides.size() == 1) return sides.front();
  return refuse(
      sides.empty()
          ? say("No prosthesis of {} is recorded for {}; say for which side the part is.",
                patient.text, iso_text(day))
          : say("{} has prostheses on both sides; say for which side the part is.", patient.text));
}

Expected<std::string> place_of(const store::Snapshot& snapshot, const std::string& named) {
  Clinic clinic;
  clinic.settings = snapshot.settings();
  if (named.empty()) return clinic.settings.main_place;
  for (auto& row : snapshot.all<Place>()) clinic.places.push_back(std::move(row.record));
  clinic.shelf = snapshot.shelf();
  std::vector<std::string> stores;
  for (const Place& place : all_places(clinic)) {
    if (place.sort == PlaceSort::store) stores.push_back(place.name);
  }
  if (std::ranges::find(stores, named) != stores.end()) return named;
  return refuse(say("'{}' is no store of the clinic; these are: {}.", named, list_words(stores)));
}

Expected<IssueQuestion> question_of(const store::Snapshot& snapshot, const Clinic& clinic,
                                    const BookingRequest& request, Date today) {
  const ClinicIndex index{clinic};
  const Patient* patient = index.patient({request.patient});
  if (patient == nullptr) {
    return refuse(say("There is no patient '{}'; check the reference.", request.patient));
  }
  if (request.item.empty()) return refuse(say("Name the item by its code."));
  if (index.item({request.item}) == nullptr) {
    return refuse(say("The catalogue has no item '{}'; check the code.", request.item));
  }
  if (request.quantity < 1) return refuse(say("At least one piece must be booked."));
  IssueQuestion made;
  made.patient = patient->ref;
  made.item = {request.item};
  made.quantity = request.quantity;
  const auto day = day_of(*patient, request.on, today);
  if (!day) return tl::unexpected{day.error()};
  made.day = *day;
  const auto place = place_of(snapshot, request.place);
  if (!place) return tl::unexpected{place.error()};
  made.place = *place;
  const auto side = request.side ? Expected<Side>{*request.side}
                                 : side_of(clinic, made.patient, made.item, made.day);
  if (!side) return tl::unexpected{side.error()};
  made.side = *side;
  return made;
}

/// Kept as the reason.
std::string why_booked(const BookingRequest& request) {
  auto text = fmt::format("booking of {} for {}", request.item, request.patient);
  if (!request.reason.empty()) text += fmt::format(": {}", request.reason);
  if (!request.override_by.empty()) {
    text += fmt::format("; decided by {}: {}", request.override_by, request.override_because);
  }
  return text;
}

bool answers(const Reservation& booking, const BookingChoice& choice) {
  return booking.quantity > 0 && booking.patient.text == choice.patient &&
         booking.item.text == choice.item && (!choice.on || booking.needed_on == choice.on) &&
         (!choice.without_day || !booking.needed_on) &&
         (choice.place.empty() || booking.place == choice.place);
}

}  // namespace

Expected<IssueCheck> check_booking(const store::Snapshot& snapshot, const BookingRequest& request,
                                   Date today) {
  const auto clinic = read_for_issue(snapshot, {request.item});
  const auto question = question_of(snapshot, clinic, request, today);
  if (!question) return tl::unexpected{question.error()};
  return check_without_piece(clinic, *question);
}

Expected<BookingOutcome> book_pieces(store::Store& store, const BookingRequest& request, Date today,
                                     const std::string& who) {
  if (request.override_by.empty() != request.override_because.empty()) {
    return refuse(say("Name both the clinician who decides and the reason."));
  }
  const auto work = store.begin_write({who, why_booked(request)});
  auto check = check_booking(*work, request, today);
  if (!check) return tl::unexpected{check.error()};
  BookingOutcome outcome{std::move(*check), false, {}};
  if (outcome.check.stops() && request.override_by.empty()) return outcome;
  const auto& question = outcome.check.question;
  outcome.booking = add_to_booking(
      *work, {question.patient, question.item, question.place, question.quantity, question.day});
  work->commit();
  outcome.recorded = true;
  return outcome;
}

Expected<CancelledBooking> cancel_booking(store::UnitOfWork& work, const BookingChoice& choice) {
  if (!work.patient({choice.patient})) {
    return refuse(say("There is no patient '{}'; check the reference.", choice.patient));
  }
  std::vector<store::Row<Reservation>> found;
  for (auto& row : work.all<Reservation>()) {
    if (answers(row.record, choice)) found.push_back(std::move(row));
  }
  if (found.empty()) {
    return refuse(say("No such piece of {} is booked for {}; check item, day and place.",
                      choice.item, choice.patient));
  }
  if (found.size() > 1) {
    std::vector<std::string> several;
    for (const auto& row : found) several.push_back(booking_words(row.record));
    return refuse(
        say("Several bookings answer to that: {}; say the day or the place.", list_words(several)));
  }
  auto booking = found.front().record;
  const int pieces = choice.quantity == 0 ? booking.quantity : choice.quantity;
  if (pieces < 1 || pieces > booking.quantity) {
    return refuse(say_n("Only {} piece is booked: {}; say how many of them are not needed.",
                        "Only {} pieces are booked: {}; say how many of them are not needed.",
                        static_cast<unsigned long>(booking.quantity),
                        number_words(booking.quantity), booking_words(booking)));
  }
  booking.quantity -= pieces;
  work.put_instead(found.front().id, booking);
  return CancelledBooking{booking, pieces};
}

std::string cancelled_words(const CancelledBooking& cancelled) {
  auto taken = cancelled.booking;
  taken.quantity = cancelled.pieces;
  auto text =
      say_n("{} is no longer booked for {}", "{} are no longer booked for {}",
            static_cast<unsigned long>(taken.quantity), booking_words(taken), taken.patient.text);
  if (const int left = cancelled.booking.quantity; left > 0) {
    text += say_n("; {} piece still is", "; {} pieces still are", static_cast<unsigned long>(left),
                  number_words(left));
  }
  return text + ".";
}

}  // namespace sparewell::desk
