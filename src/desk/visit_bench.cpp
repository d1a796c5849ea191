#include "desk/visit_bench.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/booking_rows.hpp"
#include "desk/issue_check.hpp"
#include "desk/part_words.hpp"
#include "desk/taken_spares.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// "lot A12 (use by 3 Mar 2028) at main store".
std::string place_words(const StockLevel& level, int wanted) {
  auto words = level.lot.lot.empty() ? std::string{said("without a lot number")}
                                     : say("lot {}", level.lot.lot);
  if (level.lot.use_by) words += say(" (use by {})", date_words(*level.lot.use_by));
  words += say(" at {}", level.place);
  return level.quantity == wanted ? words : say("{} of {}", level.quantity, words);
}

/// Where the pieces lie, and how many do not.
std::string take_words(const BenchPieces& pieces) {
  std::vector<std::string> parts;
  for (const auto& level : pieces.take) parts.push_back(place_words(level, pieces.quantity));
  const int missing = pieces.missing();
  if (missing > 0) {
    parts.push_back(missing == pieces.quantity ? said("not on the shelf")
                                               : say("{} not on the shelf", missing));
  }
  return fmt::format("{}", fmt::join(parts, "; "));
}

int pieces_in(const std::vector<StockLevel>& levels) {
  int all = 0;
  for (const auto& level : levels) all += level.quantity;
  return all;
}

}  // namespace

int BenchPieces::missing() const {
  return stopped.empty() ? quantity - pieces_in(take) : 0;
}

Bench::Bench(const Day& day, Date visit)
    : day_{day},
      visit_{visit},
      shelf_{day.clinic().shelf},
      servings_{bookings_of(day.clinic(), "", day.today())} {
  for (const auto& life : day.assessment().lives) {
    if (life.next_item) next_items_.emplace(life.unit, *life.next_item);
  }
}

std::vector<BenchPieces> Bench::pieces_for(const PatientRef& patient,
                                           const std::vector<NearEnd>& near_end) {
  auto made = booked(patient);
  std::map<ItemCode, int> covering;
  for (const auto& pieces : made) covering[pieces.item] += pieces.quantity;
  std::map<std::pair<Side, ItemCode>, int> wanted;
  for (const auto& part : near_end) {
    for (const auto unit : part.units) {
      const auto& worn = day_.clinic().units[unit];
      const auto next = next_items_.find(unit);
      ++wanted[{worn.side, next == next_items_.end() ? worn.item : next->second}];
    }
  }
  for (const auto& [what, quantity] : wanted) {
    const auto& [side, item] = what;
    const int covered = std::min(quantity, covering[item]);
    covering[item] -= covered;
    if (quantity == covered) continue;
    made.push_back(replacement(patient, side, item, quantity - covered));
  }
  return made;
}

std::vector<StockLevel> Bench::take(const PatientRef& patient, const ItemCode& item, int quantity) {
  int for_others = 0;
  for (const auto& [key, pieces] : set_aside_) {
    if (key.first == item && key.second != patient) for_others += pieces;
  }
  return take_spares(shelf_, day_.clinic(), item, patient, quantity, visit_, for_others);
}

std::vector<BenchPieces> Bench::booked(const PatientRef& patient) {
  std::vector<BenchPieces> made;
  for (const auto& serving : servings_) {
    const auto& booking = *serving.booking;
    if (booking.patient != patient || booking.needed_on.value_or(visit_) > visit_) continue;
    BenchPieces pieces;
    pieces.item = booking.item;
    pieces.quantity = booking.quantity;
    pieces.booked = true;
    pieces.take = take(patient, booking.item, booking.quantity);
    set_aside_[{booking.item, patient}] += pieces_in(pieces.take);
    pieces.words =
        say("Booked: {}: {}.", pieces_words(booking.quantity, booking.item), take_words(pieces));
    if (pieces.missing() > 0) {
      pieces.words += say(" Of the booking: {}.", serving_words(serving, day_.today()));
    }
    made.push_back(std::move(pieces));
  }
  return made;
}

BenchPieces Bench::replacement(const PatientRef& patient, Side side, const ItemCode& item,
                               int quantity) {
  BenchPieces pieces;
  pieces.item = item;
  pieces.quantity = quantity;
  const auto name = fmt::format("{}, {}", pieces_words(quantity, item), shown_word(side));
  IssueQuestion question;
  question.patient = patient;
  question.side = side;
  question.item = item;
  question.day = visit_;
  if (const auto check = check_without_piece(day_.clinic(), question)) {
    pieces.stopped = words_of(*check, care::Gravity::stops);
  }
  if (!pieces.stopped.empty()) {
    pieces.words =
        say("Not to be handed over unless a clinician decides so: {}: {}", name, pieces.stopped);
    return pieces;
  }
  pieces.take = take(patient, item, quantity);
  pieces.words = say("Replacement: {}: {}.", name, take_words(pieces));
  return pieces;
}

/// "2 of LS10-28, Locking liner, size 28".
std::string Bench::pieces_words(int quantity, const ItemCode& code) const {
  const auto* item = day_.index().item(code);
  return item == nullptr ? say("{} of {}", quantity, code.text)
                         : say("{} of {}, {}", quantity, code.text, item_words(*item));
}

}  // namespace sparewell::desk
