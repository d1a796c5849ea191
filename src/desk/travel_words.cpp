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
  return fmt::format("{}, {}", capitalised(shown_word(part.side)), function_words(part.function));
}

/// By when the pieces that are not on the shelf have to be ordered.
std::string order_words(const TravelPart& part, Date today) {
  const auto count = static_cast<unsigned long>(part.to_order);
  const auto pieces = number_words(part.to_order);
  if (!part.order_by) {
    return say_n(" {} piece is not on the shelf: order in time.",
                 " {} pieces are not on the shelf: order in time.", count, pieces);
  }
  const auto day = date_words(*part.order_by);
  if (*part.order_by < today) {
    return say_n(
        " {} piece is not on the shelf: order at once; the day to have it in time nine times in "
        "ten, {}, has passed.",
        " {} pieces are not on the shelf: order at once; the day to have them in time nine times "
        "in ten, {}, has passed.",
        count, pieces, day);
  }
  return say_n(" {} piece is not on the shelf: order by {}.",
               " {} pieces are not on the shelf: order by {}.", count, pieces, day);
}

}  // namespace

std::string travel_source_words(const TravelPart& part, Date today) {
  std::string words;
  for (const auto& level : part.take) {
    const auto quantity = number_words(level.quantity);
    words += level.lot.lot.empty()
                 ? say(" Take {} of those without a lot number from {}.", quantity, level.place)
                 : say(" Take {} of lot {} from {}.", quantity, level.lot.lot, level.place);
  }
  return part.to_order == 0 ? words : words + order_words(part, today);
}

std::string assurance_words(double chance) {
  constexpr double nearly = 0.999;
  if (chance > nearly) return said("over 99.9 %");
  return chance < 0.001 ? said("under 0.1 %") : say("{:.1f} %", 100 * chance);
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
  const auto wanted = assurance_words(check.request.wanted);
  words += spares == 0 ? say("; no spare is needed for the wanted {}.", wanted)
                       : say("; with {} packed it is {}, of the wanted {}.",
                             count_words(spares, "spare", "spares"),
                             assurance_words(check.with_spares), wanted);
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
    words += say_n("{} spare is lent already and to be taken along. ",
                   "{} spares are lent already and to be taken along. ",
                   static_cast<unsigned long>(lent), number_words(lent));
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
    words += say(" Not to be packed unless a clinician decides so: {}", finding.words);
  }
  return words;
}

std::vector<std::string> travel_gaps(const TravelCheck& check) {
  std::vector<std::string> made;
  for (const auto& [side, function] : check.unknown) {
    made.push_back(
        say("{}: the suspension needs a {}, and none is recorded as worn. How long it lasts is not "
            "known, and no chance here counts it.",
            capitalised(shown_word(side)), function_words(function)));
  }
  return made;
}

std::string resupply_words(const TravelRequest& request) {
  if (!request.resupply_days) return "";
  return say("there another can be had in {}", count_words(*request.resupply_days, "day", "days"));
}

std::vector<std::string> travel_cautions(const TravelRequest& request) {
  const auto help = request.resupply_days
                        ? say("Reckoned for parts that last until the departure, for a place where "
                              "every part can be had {} after it fails, on the careful side, "
                              "without other help. Ask there before leaving.",
                              count_words(*request.resupply_days, "day", "days"))
                        : std::string{said("Reckoned for parts that last until the departure, "
                                           "without help or parts at the place.")};
  return {
      say("{} Parts that fit loosely or badly, the prosthesis itself, water, sand, and baggage "
          "that is lost are not reckoned with: pack spares in the hand luggage.",
          help),
      said("Before packing, try each spare on, and look at the skin every day on the trip; at "
           "pain, redness that stays, or blisters, take the prosthesis off and ask a clinician."),
      care_caution()};
}

std::vector<std::string> water_cautions(const TravelCheck& check) {
  if (!check.request.use.water) return {};
  std::vector<std::string> made{
      said("Water: no figure is known for how much sooner parts wear out in it. It is reckoned "
           "here as high sweating, which may be too little. Ask the maker whether the prosthesis "
           "and each part may get wet at all.")};
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
           "and jam."));
  add(has([](const Along& part) { return part.first == Kind::valve; }),
      said("Valves: rinse them; sand keeps them from closing."));
  add(has([](const Along& part) { return part.first == Kind::pump; }),
      said("Vacuum pumps must not get wet unless their maker allows it."));
  return made;
}

}  // namespace sparewell::desk
