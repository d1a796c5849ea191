#include "desk/restock_words.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using supply::PlaceOutlook;
using supply::RestockMove;

constexpr std::size_t most_named_patients = 4;
constexpr double worth_telling = 0.05;

std::string amount_text(double pieces) {
  return pieces < worth_telling ? said("under 0.1") : say("{:.1f}", pieces);
}

/// "2 on hand, 1 on the way, 1 reserved".
std::string there_words(const PlaceOutlook& place) {
  std::string words = say("{} on hand", place.on_hand);
  if (place.in_transit > 0) words += say(", {} on the way", place.in_transit);
  if (place.reserved > 0) words += say(", {} reserved", place.reserved);
  return words;
}

/// The parts in use of one side of a patient.
struct Wearer {
  std::string who;
  double none = 1;  ///< chance that none of them is needed anew
  int parts = 0;
};

/// Most likely first.
std::vector<Wearer> wearers(const RestockMove& move) {
  std::vector<Wearer> made;
  for (const auto& need : move.needs) {
    const auto who = fmt::format("{} {}", need.patient.text, shown_word(need.side));
    auto found = std::ranges::find(made, who, &Wearer::who);
    if (found == made.end()) found = made.insert(made.end(), Wearer{who});
    found->none *= 1 - need.chance;
    ++found->parts;
  }
  std::ranges::stable_sort(made, {}, &Wearer::none);
  return made;
}

/// "P-7 left (35 %), P-9 right (12 %) and 3 more parts in use", or what else asks for it.
std::string needed_by_words(const RestockMove& move) {
  std::vector<std::string> parts;
  int more = move.more_needs;
  for (const auto& wearer : wearers(move)) {
    if (parts.size() < most_named_patients) {
      parts.push_back(fmt::format("{} ({})", wearer.who, chance_words(1 - wearer.none)));
    } else {
      more += wearer.parts;
    }
  }
  if (more > 0) parts.push_back(count_words(more, "more part in use", "more parts in use"));
  if (move.for_new_patients >= worth_telling) {
    parts.push_back(say("new patients ({:.1f} pieces)", move.for_new_patients));
  }
  return list_words(parts);
}

/// Of a place that receives.
std::string falling_words(const PlaceOutlook& place) {
  const auto before = chance_words(place.chance_short_before);
  const auto after = chance_words(place.chance_short_after);
  return before == after ? say("stays {}", before) : say("falls from {} to {}", before, after);
}

/// Of a place that sends.
std::string rising_words(const PlaceOutlook& place) {
  const auto before = chance_words(place.chance_short_before);
  const auto after = chance_words(place.chance_short_after);
  return before == after ? say("stays {}", before) : say("rises from {} to {}", before, after);
}

/// "until 9 Dec 2026 (7 days to the next round, then 2 days on the way) 1.4 are expected ...".
std::string need_words(const RestockMove& move, const RestockPlan& plan) {
  const bool one =
      move.to.expected >= worth_telling && fmt::format("{:.1f}", move.to.expected) == "1.0";
  const auto until = date_words(move.to.until);
  const auto round = count_words(plan.days_between, "day", "days");
  const auto way = count_words(move.transit_days, "day", "days");
  const auto amount = amount_text(move.to.expected);
  return one ? say("until {} ({} to the next round, then {} on the way) {} is expected to be "
                   "needed there.",
                   until, round, way, amount)
             : say("until {} ({} to the next round, then {} on the way) {} are expected to be "
                   "needed there.",
                   until, round, way, amount);
}

}  // namespace

std::string lots_words(const RestockMove& move) {
  std::vector<std::string> parts;
  for (const auto& level : move.lots) {
    auto text =
        level.lot.lot.empty() ? std::string{said("no lot number")} : say("lot {}", level.lot.lot);
    if (move.lots.size() > 1) text = say("{} of {}", level.quantity, text);
    if (level.lot.use_by) text += say(", use by {}", date_words(*level.lot.use_by));
    parts.push_back(std::move(text));
  }
  return fmt::format("{}", fmt::join(parts, "; "));
}

std::string move_words(const RestockMove& move) {
  return say("{} of {} from {} to {} ({})", move.quantity, move.item.text, move.from.place,
             move.to.place, lots_words(move));
}

std::string why(const RestockMove& move, const RestockPlan& plan) {
  std::string text =
      fmt::format("{}: {}; {}", move.to.place, there_words(move.to), need_words(move, plan));
  if (const auto who = needed_by_words(move); !who.empty()) {
    text += say(" Expected to need it: {}.", who);
  }
  text += say(" The chance to run out there {}.", falling_words(move.to));
  text += say(" {}: {}, {} expected to be needed; the chance to run out there {}.", move.from.place,
              there_words(move.from), amount_text(move.from.expected), rising_words(move.from));
  text +=
      say(" Of the item {:.2f} pieces are then expected to be missing, without moves "
          "{:.2f}.",
          move.missing_after, move.missing_before);
  return text;
}

std::string summary_words(const RestockPlan& plan) {
  int pieces = 0;
  for (const auto& move : plan.moves) pieces += move.quantity;
  return say("{} in {}, meant to last until the next round in {}.",
             count_words(pieces, "piece", "pieces"),
             count_words(static_cast<long long>(plan.moves.size()), "move", "moves"),
             count_words(plan.days_between, "day", "days"));
}

std::string nothing_to_move_words(const RestockPlan& plan) {
  if (!plan.several_places()) {
    return said(
        "All stock is kept in one place. Say where patients belong, or record a second store "
        "(Shelf, Places), to have moves proposed.");
  }
  return said(
      "Nothing needs to be moved: every piece lies where it is most likely needed, or moving it "
      "would hardly help.");
}

}  // namespace sparewell::desk
