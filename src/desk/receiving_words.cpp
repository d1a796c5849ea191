#include "desk/receiving_words.hpp"

#include <algorithm>
#include <set>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using Finding = supply::ReceivingFinding::Kind;
using Match = supply::OrderMatch::Kind;

std::string pieces_words(int count) {
  return count_words(count, "piece", "pieces");
}

/// "order PO-7 of Tern": of the first line that was found.
std::string order_words(const ReceivingOutcome& outcome) {
  const OrderLine& line = outcome.lines[outcome.match.lines.front()];
  return say("order {} of {}", line.order_ref, line.supplier.text);
}

std::string lot_words(const Lot& lot) {
  return fmt::format(
      "{}, {}", lot.lot.empty() ? said("no lot recorded") : say("lot {}", lot.lot),
      lot.use_by ? say("use by {}", date_words(*lot.use_by)) : said("no use-by date"));
}

std::string serial_words(const std::vector<std::string>& serials) {
  if (serials.empty()) return {};
  return serials.size() == 1 ? say(", serial number {}", serials.front())
                             : say(", serial numbers {}", list_words(serials));
}

std::string patient_side(const PutAway& piece) {
  if (!piece.side) return piece.patient.text;
  return fmt::format("{} {}", piece.patient.text, shown_word(*piece.side));
}

std::string wrong_item_words(const ReceivingOutcome& outcome) {
  std::set<std::string> ordered;
  for (const auto at : outcome.match.lines) ordered.insert(outcome.lines[at].item.text);
  return say(
      "{} is for {}, not for {}: nothing was recorded; set the part aside and ask "
      "the supplier.",
      capitalised(order_words(outcome)), list_words({ordered.begin(), ordered.end()}),
      outcome.item.code.text);
}

std::string several_words(const ReceivingOutcome& outcome) {
  return say(
      "{} of {} answer to the delivery: nothing was recorded; name the order that "
      "the delivery note names, and the supplier if two have the same number.",
      count_words(std::ssize(outcome.match.lines), "order line", "order lines"),
      outcome.item.code.text);
}

}  // namespace

std::string match_refusal(const ReceivingOutcome& outcome, const std::string& order_ref) {
  const auto& item = outcome.item.code.text;
  switch (outcome.match.kind) {
    case Match::unknown_order:
      return say("There is no order '{}'; check the number on the delivery note.", order_ref);
    case Match::none_open:
      return say(
          "No order has pieces of {} still to come; if it was ordered, record the "
          "order first, otherwise ask the supplier.",
          item);
    case Match::draft:
      return say(
          "{} is a draft that was not sent; mark it as sent first, and then receive "
          "the delivery.",
          capitalised(order_words(outcome)));
    case Match::cancelled:
      return say(
          "{} was cancelled for {}; set the delivery aside and ask the supplier, or "
          "place a new order for it.",
          capitalised(order_words(outcome)), item);
    default:
      return {};
  }
}

namespace {

std::string known_serial_words(const supply::KnownSerial& known, const std::string& outcome,
                               bool stops) {
  const auto* what_to_do = stops ? said(
                                       "; compare the label, and accept the number only when the "
                                       "same piece has come again")
                                 : "";
  const auto on = date_words(known.on);
  if (known.patient.empty()) {
    return say("Serial number {} was received on {} already: {}{}.", known.serial, on, outcome,
               what_to_do);
  }
  return say("Serial number {} was handed to {} on {} already: {}{}.", known.serial,
             known.patient.text, on, outcome, what_to_do);
}

}  // namespace

std::string finding_words(const supply::ReceivingFinding& finding,
                          const ReceivingOutcome& outcome) {
  const auto& delivery = outcome.delivery;
  const char* nothing =
      outcome.is_recorded() ? said("it was recorded") : said("nothing was recorded");
  switch (finding.kind) {
    case Finding::over_delivered:
      return say_n("{} came, but {} of {} was still to come: {}; {}.",
                   "{} came, but {} of {} were still to come: {}; {}.",
                   static_cast<unsigned long>(finding.outstanding), pieces_words(delivery.quantity),
                   number_words(finding.outstanding), order_words(outcome), nothing,
                   finding.stops ? said("count again, and then accept the extra pieces or receive "
                                        "only what was ordered")
                                 : said("watch that they are not invoiced twice"));
    case Finding::no_use_by:
      return say("{} has a shelf life, and no use-by date was given: {}; {}.",
                 outcome.item.code.text, nothing,
                 finding.stops ? said("read the date from the label, or say that the label has "
                                      "none")
                               : said("without a date nobody is warned when the part grows too "
                                      "old"));
    case Finding::expired:
      return say("The use-by date {} has passed: {}; {}.", date_words(*finding.use_by), nothing,
                 finding.stops ? said("send the part back, or receive it into quarantine")
                               : said("do not hand it out"));
    case Finding::known_serial:
      return known_serial_words(*finding.known, nothing, finding.stops);
    default:
      return say(
          "Lot {} lies on the shelf with the use-by date {}, not {}: {}; look at "
          "the labels, one of the dates is wrong.",
          delivery.lot, date_words(*finding.use_by),
          date_words(delivery.use_by, said_of("date", "none")), nothing);
  }
}

std::vector<std::string> finding_sentences(const ReceivingOutcome& outcome) {
  if (outcome.match.kind == Match::wrong_item) return {wrong_item_words(outcome)};
  if (outcome.match.kind == Match::several) return {several_words(outcome)};
  std::vector<std::string> made;
  for (const auto& finding : outcome.receiving.findings) {
    made.push_back(finding_words(finding, outcome));
  }
  return made;
}

namespace {

/// What becomes of the damaged pieces: no more are owed than are still to come of the order.
std::string replacement_words(const ReceivingOutcome& outcome) {
  const int damaged = outcome.delivery.damaged;
  const auto pieces = static_cast<unsigned long>(damaged);
  if (outcome.delivery.damaged_settled) {
    return said_n("the supplier does not replace it", "the supplier does not replace them", pieces);
  }
  int to_come = -outcome.delivery.counted();
  for (const std::size_t at : outcome.match.lines) to_come += outcome.lines[at].outstanding();
  if (to_come >= damaged) {
    return said_n("the supplier still owes it", "the supplier still owes them", pieces);
  }
  if (to_come > 0) {
    return say("the supplier still owes {} of them", number_words(to_come));
  }
  return said_n("nothing is owed for it, because all that was ordered has come",
                "nothing is owed for them, because all that was ordered has come", pieces);
}

}  // namespace

std::vector<std::string> receipt_lines(const ReceivingOutcome& outcome) {
  if (!outcome.is_recorded()) return {said("Nothing was recorded.")};
  std::vector<std::string> made;
  if (const auto& movement = outcome.receiving.movement) {
    made.push_back(say("{} of {}, {}{}, put to {}.", pieces_words(movement->quantity),
                       outcome.item.code.text, lot_words(movement->lot),
                       serial_words(movement->serials), movement->place));
  }
  if (const auto& damaged = outcome.receiving.damaged) {
    made.push_back(say("{} of {}{} came damaged, put to {}; {}.", pieces_words(damaged->quantity),
                       outcome.item.code.text, serial_words(damaged->serials), damaged->place,
                       replacement_words(outcome)));
  }
  for (const auto& receipt : outcome.receiving.lines) {
    const OrderLine& line = receipt.after;
    made.push_back(say("Order {} of {}: {} of {} received{}.", line.order_ref, line.supplier.text,
                       number_words(line.received_quantity), pieces_words(line.quantity),
                       line.outstanding() > 0
                           ? say(", {} to come, on back-order", number_words(line.outstanding()))
                           : said(", complete")));
  }
  for (const auto& piece : outcome.put_away) {
    made.push_back(piece.needed_on ? say("Put 1 piece away for {}, needed by {}.",
                                         patient_side(piece), date_words(*piece.needed_on))
                                   : say("Put 1 piece away for {}.", patient_side(piece)));
  }
  if (!outcome.waiting.empty()) {
    std::vector<std::string> names;
    for (const auto& piece : outcome.waiting) names.push_back(patient_side(piece));
    made.push_back(say("Still to come for {}.", list_words(names)));
  }
  return made;
}

std::string open_line_words(const OrderLine& line) {
  return say("{}  {}  {}: {} of {} to come, ordered {}", line.order_ref, line.supplier.text,
             line.item.text, number_words(line.outstanding()), pieces_words(line.quantity),
             date_words(line.ordered_on));
}

std::string expected_line_words(const supply::ExpectedLine& expected) {
  const auto line = open_line_words(expected.line);
  const auto on = date_words(expected.expected_on);
  auto text = expected.promised_on ? say("{}, promised for {}", line, on)
                                   : say("{}, expected {}", line, on);
  if (expected.on_back_order) text += said(", on back-order");
  if (expected.lead_assumed && !expected.promised_on) text += said(" (lead time assumed)");
  if (expected.overdue_days > 0) {
    text += say(", {} overdue", count_words(expected.overdue_days, "day", "days"));
  }
  return text;
}

std::string finding_key(Finding kind) {
  switch (kind) {
    case Finding::over_delivered:
      return "over_delivered";
    case Finding::no_use_by:
      return "no_use_by";
    case Finding::expired:
      return "expired";
    case Finding::known_serial:
      return "known_serial";
    default:
      return "other_use_by";
  }
}

}  // namespace sparewell::desk
