#include "desk/travel_lend.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "clinic/say.hpp"
#include "desk/stock_owed.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// Lends the spares of one part, and adds what is said about it to `booked`; a refusal or "".
std::string lend_part(store::UnitOfWork& work, const TravelPart& part, const TravelCheck& check,
                      Date today, Booked& booked) {
  if (!part.stops.empty()) {
    return say("{} Nothing was lent. Where a clinician decides otherwise, lend it by itself.",
               part.stops.front().words);
  }
  for (const StockLevel& level : part.take) {
    LendRequest request;
    request.pieces = {level.lot.item, level.lot.lot, level.lot.use_by, level.place, level.quantity};
    request.patient = check.request.patient;
    request.side = part.side;
    request.due_on = check.last_day;
    request.note = fmt::format("spare for the trip from {}", iso_text(check.request.departure));
    const auto lent = book_loan(work, request, today);
    if (!lent) return lent.error().sentence;
    booked.movements.insert(booked.movements.end(), lent->movements.begin(), lent->movements.end());
    booked.number = lent->number;
    booked.notes.push_back(say("{} of {} for {}.", number_words(level.quantity),
                               level.lot.item.text, check.request.patient));
    booked.notes.insert(booked.notes.end(), lent->notes.begin(), lent->notes.end());
  }
  if (part.to_order > 0) {
    booked.notes.push_back(say_n("{} piece is of {} not on the shelf and has to be ordered.",
                                 "{} pieces are of {} not on the shelf and has to be ordered.",
                                 static_cast<unsigned long>(part.to_order),
                                 number_words(part.to_order), part.item.text));
  }
  return {};
}

Expected<Booked> finished(Booked booked) {
  if (booked.movements.empty()) return refuse(say("No spare lies on the shelf; nothing was lent."));
  return booked;
}

}  // namespace

Expected<Booked> lend_spares(store::UnitOfWork& work, const TravelCheck& check, Date today) {
  Booked booked;
  for (const TravelPart& part : check.parts) {
    auto refusal = lend_part(work, part, check, today, booked);
    if (!refusal.empty()) return refuse(std::move(refusal));
  }
  return finished(std::move(booked));
}

Expected<Booked> lend_spares(store::UnitOfWork& work, const TeamCheck& team, Date today) {
  Booked booked;
  for (const TravelCheck& member : team.members) {
    for (const TravelPart& part : member.parts) {
      auto refusal = lend_part(work, part, member, today, booked);
      if (!refusal.empty()) return refuse(std::move(refusal));
    }
  }
  for (const SharedSpares& shared : team.shared) {
    const auto& first = team.members[shared.users.front().member];
    auto refusal = lend_part(work, shared.part, first, today, booked);
    if (!refusal.empty()) return refuse(std::move(refusal));
  }
  return finished(std::move(booked));
}

namespace {

void add_pieces(std::vector<std::string>& pieces, const TravelPart& part) {
  for (const StockLevel& level : part.take) {
    const auto quantity = number_words(level.quantity);
    const auto& item = level.lot.item.text;
    const auto& lot = level.lot.lot;
    pieces.push_back(lot.empty()
                         ? say("{} of {} from {}", quantity, item, level.place)
                         : say("{} of {}, lot {}, from {}", quantity, item, lot, level.place));
  }
}

}  // namespace

std::string lending_words(const TeamCheck& team) {
  std::vector<std::string> told;
  for (std::size_t i = 0; i < team.members.size(); ++i) {
    std::vector<std::string> pieces;
    for (const TravelPart& part : team.members[i].parts) add_pieces(pieces, part);
    for (const SharedSpares& shared : team.shared) {
      if (shared.users.front().member == i) add_pieces(pieces, shared.part);
    }
    if (pieces.empty()) continue;
    told.push_back(fmt::format("{} {}", team.members[i].request.patient, list_words(pieces)));
  }
  if (told.empty()) return {};
  return say("{}; until {}", fmt::join(told, "; "), date_words(team.members.front().last_day));
}

std::string lending_words(const TravelCheck& check) {
  std::vector<std::string> pieces;
  for (const TravelPart& part : check.parts) add_pieces(pieces, part);
  if (pieces.empty()) return {};
  return say("{}; until {}", list_words(pieces), date_words(check.last_day));
}

}  // namespace sparewell::desk
