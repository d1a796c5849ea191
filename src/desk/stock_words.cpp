#include "desk/stock_words.hpp"

#include <cstdlib>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/shelf_page.hpp"
#include "desk/stock_refusals.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

bool are_out_and_in(const StockMovement& out, const StockMovement& in) {
  return out.quantity < 0 && in.quantity == -out.quantity && in.lot == out.lot &&
         in.place != out.place;
}

std::string pieces_words(int quantity, const Lot& lot) {
  return say("{} of {}", quantity, lot_name(lot));
}

}  // namespace

std::vector<std::string> movement_lines(const std::vector<StockMovement>& movements) {
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < movements.size(); ++i) {
    const auto& movement = movements[i];
    const auto pieces = pieces_words(std::abs(movement.quantity), movement.lot);
    if (i + 1 < movements.size() && are_out_and_in(movement, movements[i + 1])) {
      const auto& to = movements[i + 1].place;
      lines.push_back(
          movement.place == transit_place(to).name
              ? say("{}: arrived at {}", pieces, shown_place(to))
              : say("{}: {} to {}", pieces, shown_place(movement.place), shown_place(to)));
      ++i;
      continue;
    }
    const auto kind = shown_word(movement.kind);
    lines.push_back(movement.quantity < 0
                        ? say("{}: out of {} ({})", pieces, shown_place(movement.place), kind)
                        : say("{}: into {} ({})", pieces, shown_place(movement.place), kind));
  }
  return lines;
}

std::vector<std::string> booked_lines(const Booked& booked) {
  auto lines = movement_lines(booked.movements);
  lines.insert(lines.end(), booked.notes.begin(), booked.notes.end());
  return lines;
}

std::string stock_line_words(const StockLevel& level, const Clinic& clinic, Date today) {
  auto text =
      fmt::format("{}: {}", shown_place(level.place), pieces_words(level.quantity, level.lot));
  if (level.lot.use_by) text += say(", use by {}", date_words(*level.lot.use_by));
  const auto state = lot_state(level, clinic.places, today);
  if (state != LotState::usable) text += fmt::format(", {}", lot_state_words(state));
  return text;
}

std::string loan_words(const Loan& loan, Date today) {
  auto text = say("loan {}: {}, with {} ({}), due {}", loan.number,
                  pieces_words(loan.outstanding(), loan.lot), loan.patient.text,
                  shown_word(loan.side), date_words(loan.due_on));
  if (loan.overdue_on(today)) {
    text += say(", {} overdue", count_words(days_between(loan.due_on, today), "day", "days"));
  }
  return text;
}

std::string credit_words(const SupplierReturn& sent) {
  const auto rest = sent.outstanding();
  auto text =
      say("return {} to {} ({}): {}, sent {}, {}", sent.number, sent.supplier.text, sent.reference,
          pieces_words(sent.quantity, sent.lot), date_words(sent.sent_on),
          rest ? say("{} due", amount_words(*rest)) : std::string{said("credit due not known")});
  if (sent.credited) text += say(" after {}", amount_words(*sent.credited));
  return text;
}

std::string transit_words(const StockLevel& level) {
  return fmt::format("{}, {}", pieces_words(level.quantity, level.lot), shown_place(level.place));
}

std::vector<StockMovement> movements_of(const store::Booking& booking, const ItemCode& item) {
  std::vector<StockMovement> made;
  for (const auto& movement : booking.movements) {
    if (movement.lot.item == item) made.push_back(movement);
  }
  return made;
}

std::vector<std::string> booking_lines(const store::Booking& booking, const ItemCode& item) {
  std::vector<std::string> lines;
  lines.push_back(
      say("booking {}, {}, {}: {}{}", booking.id.value, date_words(booking.movements.front().on),
          booking.who, said(booking.why.c_str()),
          booking.reversed_by ? say(" (taken back by booking {})", booking.reversed_by->value)
                              : std::string{}));
  const auto of_item = movements_of(booking, item);
  for (const auto& line : movement_lines(of_item)) lines.push_back(fmt::format("  {}", line));
  if (const auto others = std::ssize(booking.movements) - std::ssize(of_item); others > 0) {
    lines.push_back(say("  and {} of other items", count_words(others, "movement", "movements")));
  }
  return lines;
}

std::string place_words(const Place& place) {
  return fmt::format("{}: {}", shown_place(place.name), shown_word(place.sort));
}

}  // namespace sparewell::desk
