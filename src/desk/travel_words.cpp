#include "desk/travel_words.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "desk/issue_words.hpp"
#include "desk/patient_card.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string part_title(const TravelPart& part) {
  return fmt::format("{}, {}", capitalised(std::string{word(part.side)}),
                     function_words(part.function));
}

std::string shelf_words(const TravelPart& part, Date today) {
  std::string words;
  for (const auto& level : part.take) {
    words += fmt::format(" Take {} of {} from {}.", number_words(level.quantity),
                         level.lot.lot.empty() ? std::string{"those without a lot number"}
                                               : fmt::format("lot {}", level.lot.lot),
                         level.place);
  }
  if (part.to_order == 0) return words;
  words += fmt::format(" {} not on the shelf: order",
                       count_words(part.to_order, "piece is", "pieces are"));
  if (!part.order_by) return words + " in time.";
  return words + (*part.order_by < today
                      ? fmt::format(" at once; the day to have {} in time nine times in ten, {}, "
                                    "has passed.",
                                    part.to_order == 1 ? "it" : "them", date_words(*part.order_by))
                      : fmt::format(" by {}.", date_words(*part.order_by)));
}

}  // namespace

std::string assurance_words(double chance) {
  constexpr double nearly = 0.999;
  if (chance > nearly) return "over 99.9 %";
  return chance < 0.001 ? "under 0.1 %" : fmt::format("{:.1f} %", 100 * chance);
}

std::string travel_verdict(const TravelCheck& check) {
  int spares = 0;
  for (const auto& part : check.parts) spares += part.spares;
  const auto until = check.request.delay_days > 0
                         ? fmt::format("{} (return on {} and {} of delay)",
                                       date_words(check.last_day), date_words(check.request.back),
                                       count_words(check.request.delay_days, "day", "days"))
                         : date_words(check.last_day);
  auto words = fmt::format("From {} until {} what is worn lasts without a spare with {} chance",
                           date_words(check.request.departure), until,
                           assurance_words(check.without_spares));
  if (!check.unknown.empty()) words += ", as far as is known";
  words += spares == 0 ? "; no spare is needed for the wanted"
                       : fmt::format("; with {} packed it is {}, of the wanted",
                                     count_words(spares, "spare", "spares"),
                                     assurance_words(check.with_spares));
  words += fmt::format(" {}.", assurance_words(check.request.wanted));
  if (!check.unknown.empty()) {
    words += " Something is not known, so this is no promise that the suspension lasts.";
  } else if (std::ranges::any_of(check.parts,
                                 [](const auto& part) { return !part.stops.empty(); })) {
    words += " But a check stops a spare: see below.";
  } else if (!check.reached) {
    words += " That cannot be reached with spares.";
  }
  return words;
}

std::string travel_part_words(const TravelCheck& check, std::size_t number, Date today) {
  const TravelPart& part = check.parts.at(number);
  auto words = fmt::format("{}: ", part_title(part));
  if (part.need.carried > 0) {
    words += fmt::format("{} are in use and taken along. ", number_words(part.need.carried + 1));
  }
  words += fmt::format("Lasts with {} chance as it is", assurance_words(assurance(part.need, 0)));
  if (part.spares == 0) return words + "; pack none.";
  words += fmt::format("; pack {} of {}: then {}. With one less everything lasts with {}.",
                       number_words(part.spares), part.item.text,
                       assurance_words(assurance(part.need, part.spares)),
                       assurance_words(without_one(check, number)));
  words += shelf_words(part, today);
  for (const auto& finding : part.stops) {
    words += " Not to be packed unless a clinician decides so: " + finding.words;
  }
  return words;
}

std::vector<std::string> travel_gaps(const TravelCheck& check) {
  std::vector<std::string> made;
  for (const auto& [side, function] : check.unknown) {
    made.push_back(fmt::format(
        "{}: the suspension needs a {}, and none is recorded as worn. How long it lasts is not "
        "known, and no chance here counts it.",
        capitalised(std::string{word(side)}), function_words(function)));
  }
  return made;
}

std::vector<std::string> travel_cautions() {
  return {
      "Reckoned for parts that last until the departure, without help or parts at the place. "
      "Parts that fit loosely or badly, the prosthesis itself, water, sand, and baggage that is "
      "lost are not reckoned with: pack spares in the hand luggage.",
      "Before packing, try each spare on, and look at the skin every day on the trip; at pain, "
      "redness that stays, or blisters, take the prosthesis off and ask a clinician.",
      care_caution()};
}

}  // namespace sparewell::desk
