#include "desk/travel_words.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/issue_words.hpp"
#include "desk/patient_card.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string part_title(const TravelPart& part) {
  return fmt::format("{}, {}", capitalised(std::string{word(part.side)}),
                     function_words(part.function));
}

}  // namespace

std::string travel_source_words(const TravelPart& part, Date today) {
  std::string words;
  for (const auto& level : part.take) {
    words += say(" Take {} of {} from {}.", number_words(level.quantity),
                 level.lot.lot.empty() ? std::string{said("those without a lot number")}
                                       : fmt::format("lot {}", level.lot.lot),
                 level.place);
  }
  if (part.to_order == 0) return words;
  words += say(" {} not on the shelf: order", count_words(part.to_order, "piece is", "pieces are"));
  if (!part.order_by) return words + said(" in time.");
  return words + (*part.order_by < today
                      ? say(" at once; the day to have {} in time nine times in ten, {}, "
                            "has passed.",
                            part.to_order == 1 ? "it" : "them", date_words(*part.order_by))
                      : say(" by {}.", date_words(*part.order_by)));
}

std::string assurance_words(double chance) {
  constexpr double nearly = 0.999;
  if (chance > nearly) return said("over 99.9 %");
  return chance < 0.001 ? said("under 0.1 %") : fmt::format("{:.1f} %", 100 * chance);
}

std::string travel_verdict(const TravelCheck& check) {
  int spares = 0;
  for (const auto& part : check.parts) spares += part.spares;
  const auto until = check.request.delay_days > 0
                         ? say("{} (return on {} and {} of delay)", date_words(check.last_day),
                               date_words(check.request.back),
                               count_words(check.request.delay_days, "day", "days"))
                         : date_words(check.last_day);
  auto words =
      say("From {} until {} what is worn lasts without a spare with {} chance",
          date_words(check.request.departure), until, assurance_words(check.without_spares));
  if (!check.unknown.empty()) words += said(", as far as is known");
  words += spares == 0
               ? said("; no spare is needed for the wanted")
               : say("; with {} packed it is {}, of the wanted",
                     count_words(spares, "spare", "spares"), assurance_words(check.with_spares));
  words += fmt::format(" {}.", assurance_words(check.request.wanted));
  if (!check.unknown.empty()) {
    words += said(" Something is not known, so this is no promise that the suspension lasts.");
  } else if (std::ranges::any_of(check.parts,
                                 [](const auto& part) { return !part.stops.empty(); })) {
    words += said(" But a check stops a spare: see below.");
  } else if (!check.reached) {
    words += said(" That cannot be reached with spares.");
  }
  return words;
}

std::string travel_part_words(const TravelCheck& check, std::size_t number, Date today,
                              bool with_one_less) {
  const TravelPart& part = check.parts.at(number);
  auto words = fmt::format("{}: ", part_title(part));
  if (const auto there = resupply_words(check.request); !there.empty()) {
    words += fmt::format("{}. ", capitalised(there));
  }
  if (part.in_use() > 1) {
    words += say("{} are in use and taken along. ", number_words(part.in_use()));
  }
  if (const int lent = part.lent_pieces(); lent > 0) {
    words +=
        say("{} lent already and to be taken along. ", count_words(lent, "spare is", "spares are"));
  }
  words += say("Lasts with {} chance as it is", assurance_words(assurance(part.need, 0)));
  if (part.spares == 0) return words + said("; pack none.");
  words += say("; pack {} of {}: then {}.", number_words(part.spares), part.item.text,
               assurance_words(assurance(part.need, part.spares)));
  if (with_one_less) {
    words += say(" With one less everything lasts with {}.",
                 assurance_words(without_one(check, number)));
  }
  words += travel_source_words(part, today);
  for (const auto& finding : part.stops) {
    words += said(" Not to be packed unless a clinician decides so: ") + finding.words;
  }
  return words;
}

std::vector<std::string> travel_gaps(const TravelCheck& check) {
  std::vector<std::string> made;
  for (const auto& [side, function] : check.unknown) {
    made.push_back(
        say("{}: the suspension needs a {}, and none is recorded as worn. How long it lasts is not "
            "known, and no chance here counts it.",
            capitalised(std::string{word(side)}), function_words(function)));
  }
  return made;
}

std::string resupply_words(const TravelRequest& request) {
  if (!request.resupply_days) return "";
  return say("there another can be had in {}", count_words(*request.resupply_days, "day", "days"));
}

std::vector<std::string> travel_cautions(const TravelRequest& request) {
  const auto help =
      request.resupply_days
          ? say("for a place where every part can be had {} after it fails, on the careful "
                "side, without other help. Ask there before leaving.",
                count_words(*request.resupply_days, "day", "days"))
          : std::string{said("without help or parts at the place.")};
  return {
      say("Reckoned for parts that last until the departure, {} "
          "Parts that fit loosely or badly, the prosthesis itself, water, sand, and "
          "baggage that is lost are not reckoned with: pack spares in the hand luggage.",
          help),
      said(
          "Before packing, try each spare on, and look at the skin every day on the trip; at pain, "
          "redness that stays, or blisters, take the prosthesis off and ask a clinician."),
      care_caution()};
}

std::vector<std::string> water_cautions(const TravelCheck& check) {
  if (!check.request.use.water) return {};
  std::vector<std::string> made{said(
      "Water: no figure is known for how much sooner parts wear out in it. It is reckoned here as "
      "high sweating, which may be too little. Ask the maker whether the prosthesis and each part "
      "may get wet at all.")};
  const auto has = [&](auto test) { return std::ranges::any_of(check.along, test); };
  const auto add = [&](bool there, const char* words) {
    if (there) made.emplace_back(words);
  };
  // Common practice, no source.
  using Along = std::pair<Kind, Material>;
  add(has([](const Along& part) { return part.first == Kind::liner; }),
      said("Liners: rinse salt and chlorine off with fresh water, dry liner and skin wholly before "
           "donning; water between skin and liner lets it slip."));
  add(has([](const Along& part) {
        return part.first == Kind::sleeve && part.second == Material::neoprene;
      }),
      said("Neoprene sleeves soak water up and dry slowly: take a second one to change to."));
  add(has([](const Along& part) {
        return part.first == Kind::sleeve && part.second != Material::neoprene;
      }),
      said("Sleeves lose their hold while they are wet: rinse and dry them."));
  add(has([](const Along& part) {
        return part.first == Kind::sock || part.second == Material::fabric;
      }),
      said("Wet socks chafe: change them for dry ones after each time in the water."));
  add(has([](const Along& part) {
        return part.second == Material::metal || part.first == Kind::lock ||
               part.first == Kind::pin;
      }),
      said("Locks, pins and other metal parts: rinse sand and salt off and dry them; they may rust "
           "and "
           "jam."));
  add(has([](const Along& part) { return part.first == Kind::valve; }),
      said("Valves: rinse them; sand keeps them from closing."));
  add(has([](const Along& part) { return part.first == Kind::pump; }),
      said("Vacuum pumps must not get wet unless their maker allows it."));
  return made;
}

}  // namespace sparewell::desk
