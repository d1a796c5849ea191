#include <algorithm>

#include "clinic/say.hpp"
#include "desk/history/entries.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

void add_bookings(History& history, const Day& day, const PatientRef& patient) {
  for (const Reservation& each : day.clinic().reservations) {
    if (each.patient != patient) continue;
    const auto words = each.quantity > 0
                           ? say("Booked for this day: {} of {} at {}", each.quantity,
                                 each.item.text, shown_place(each.place))
                           : say("The booking of {} at {} for this day was handed out or cancelled",
                                 each.item.text, shown_place(each.place));
    history.push_back({Happening::visits, each.needed_on, std::nullopt, words, std::nullopt});
  }
  const auto* record = day.index().patient(patient);
  if (record != nullptr && record->next_visit) {
    history.push_back(
        {Happening::visits, record->next_visit, std::nullopt, say("Next visit"), std::nullopt});
  }
}

void add_loans(History& history, const Day& day, const PatientRef& patient) {
  for (const Loan& each : day.clinic().loans) {
    if (each.patient != patient) continue;
    auto words = say("Lent: {} of {}, lot {}, until {}; still out: {}", each.quantity,
                     each.lot.item.text, each.lot.lot.empty() ? said("not recorded") : each.lot.lot,
                     date_words(each.due_on), each.outstanding());
    if (!each.note.empty()) words += fmt::format("; {}", each.note);
    history.push_back({Happening::trips, each.lent_on, each.side, words, std::nullopt});
  }
}

/// When the order was placed or begun; empty when no line of it is left.
std::optional<Date> day_of_order(const Clinic& clinic, const OrderPiece& piece) {
  const auto line = std::ranges::find_if(clinic.order_lines, [&](const OrderLine& each) {
    return each.order_ref == piece.order_ref && each.supplier == piece.supplier &&
           each.item == piece.item;
  });
  return line == clinic.order_lines.end() ? std::nullopt : std::optional{line->ordered_on};
}

void add_orders(History& history, const Day& day, const PatientRef& patient) {
  for (const OrderPiece& each : day.clinic().order_pieces) {
    if (each.patient != patient) continue;
    history.push_back({Happening::orders, day_of_order(day.clinic(), each), each.side,
                       say("Ordered for the patient: 1 of {} with order {} from {}", each.item.text,
                           each.order_ref, each.supplier.text),
                       std::nullopt});
    if (!each.put_away_on) continue;
    history.push_back(
        {Happening::orders, each.put_away_on, each.side,
         say("Came and was put away: 1 of {} of order {}", each.item.text, each.order_ref),
         std::nullopt});
  }
}

}  // namespace

void add_supply_history(History& history, const Day& day, const PatientRef& patient) {
  add_bookings(history, day, patient);
  add_loans(history, day, patient);
  add_orders(history, day, patient);
}

}  // namespace sparewell::desk
