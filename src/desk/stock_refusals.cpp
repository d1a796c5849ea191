#include "desk/stock_refusals.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using supply::MoveRefusal;

std::string wanted_name(const supply::Pieces& wanted) {
  if (!wanted.lot) return wanted.item.text;
  return lot_name({wanted.item, *wanted.lot, std::nullopt});
}

/// "lot A (3 pieces, use by 1 Dec 2026)".
std::string lot_there(const StockLevel& level) {
  const auto lot =
      level.lot.lot.empty() ? std::string{said("no lot number")} : say("lot {}", level.lot.lot);
  const auto pieces = count_words(level.quantity, "piece", "pieces");
  if (!level.lot.use_by) return fmt::format("{} ({})", lot, pieces);
  return say("{} ({}, use by {})", lot, pieces, date_words(*level.lot.use_by));
}

std::string lots_there(const std::vector<StockLevel>& levels) {
  constexpr std::size_t most = 6;
  std::vector<std::string> parts;
  for (const auto& level : levels) {
    if (parts.size() == most) {
      parts.push_back(say("{} more", levels.size() - most));
      break;
    }
    parts.push_back(lot_there(level));
  }
  return list_words(parts);
}

/// Where the item, and the lot if one is named, lies instead.
std::string elsewhere(const supply::Pieces& wanted, const std::vector<StockLevel>& levels) {
  constexpr std::size_t most = 4;
  std::vector<std::string> parts;
  for (const auto& level : levels) {
    if (level.quantity <= 0 || (wanted.lot && level.lot.lot != *wanted.lot)) continue;
    if (parts.size() == most) {
      parts.emplace_back(said("elsewhere"));
      break;
    }
    const auto which = wanted.lot ? std::to_string(level.quantity)
                                  : say("{} of {}", level.quantity, lot_name(level.lot));
    parts.push_back(say("{} at {}", which, shown_place(level.place)));
  }
  if (parts.empty()) return said("none lies anywhere");
  return say("there are {}", list_words(parts));
}

std::string to_be_settled_words(const std::string& place, PlaceSort sort) {
  switch (sort) {
    case PlaceSort::in_transit:
      return say("What is {} must arrive first; record its arrival.", shown_place(place));
    case PlaceSort::on_loan:
      return said("What is on loan is with a patient; record what became of the loan.");
    default:
      return say("What is {} waits for its credit; record what the supplier answered.",
                 shown_place(place));
  }
}

std::string target_no_place_words(const std::string& to, PlaceSort sort) {
  switch (sort) {
    case PlaceSort::in_transit:
      return say("Nothing is put {} by hand; send it to the place itself.", shown_place(to));
    case PlaceSort::on_loan:
      return said("To lend a part, name the patient and the day until which it is lent.");
    default:
      return said("To send a part back to its supplier, record a return.");
  }
}

std::string too_few_words(const StockLevel& there, const supply::Pieces& wanted) {
  return say_n("Only {} of {} lies at {}; {} cannot leave it.",
               "Only {} of {} lie at {}; {} cannot leave it.",
               static_cast<unsigned long>(there.quantity), there.quantity, lot_name(there.lot),
               shown_place(wanted.place), wanted.quantity);
}

std::string not_expired_words(const Lot& lot) {
  if (!lot.use_by)
    return say("{} is not expired: it has no use-by date; say damaged or lost.", lot_name(lot));
  return say("{} is not expired: its use-by date is {}; say damaged or lost.", lot_name(lot),
             date_words(*lot.use_by));
}

}  // namespace

std::string lot_name(const Lot& lot) {
  if (lot.lot.empty()) return say("{} without a lot number", lot.item.text);
  return say("{}, lot {}", lot.item.text, lot.lot);
}

std::string move_refusal_words(const MoveRefusal& refusal, const supply::StockView& view) {
  const auto& wanted = refusal.wanted;
  switch (refusal.kind) {
    case MoveRefusal::no_quantity:
      return said("Name at least one piece.");
    case MoveRefusal::no_place:
      return said("Say at which place the pieces lie.");
    case MoveRefusal::no_target:
      return said("Say where the pieces go.");
    case MoveRefusal::no_reason:
      return said("Give a reason; it is kept with the movement.");
    case MoveRefusal::none_there:
      return say("Nothing of {} lies at {}: {}.", wanted_name(wanted), shown_place(wanted.place),
                 elsewhere(wanted, refusal.there));
    case MoveRefusal::several_lots:
      return say(
          "Several lots of {} lie at {}: {}; name the lot, and its use-by date where two have one "
          "number.",
          wanted.item.text, shown_place(wanted.place), lots_there(refusal.there));
    case MoveRefusal::too_few:
      return too_few_words(refusal.there.front(), wanted);
    case MoveRefusal::same_place:
      return say("The pieces lie at {} already; name another place.", shown_place(refusal.to));
    case MoveRefusal::held_back:
      return say("What lies at {} is in quarantine; release it first.", shown_place(wanted.place));
    case MoveRefusal::not_held_back:
      return say("{} is not a quarantine; only what is in quarantine is released.",
                 shown_place(wanted.place));
    case MoveRefusal::target_no_store:
      return say("{} is not a store but \"{}\"; name a branch or a shelf.", shown_place(refusal.to),
                 shown_word(view.place(refusal.to).sort));
    case MoveRefusal::target_not_held_back:
      return say("{} is not a quarantine but \"{}\"; name one, or record the place as one.",
                 shown_place(refusal.to), shown_word(view.place(refusal.to).sort));
    case MoveRefusal::target_no_place:
      return target_no_place_words(refusal.to, view.place(refusal.to).sort);
    case MoveRefusal::to_be_settled:
      return to_be_settled_words(wanted.place, view.place(wanted.place).sort);
    case MoveRefusal::not_expired:
      return not_expired_words(refusal.there.front().lot);
    case MoveRefusal::expired:
      return say("{} expired on {}; it may not be worn any more.",
                 lot_name(refusal.there.front().lot),
                 date_words(refusal.there.front().lot.use_by, ""));
  }
  return {};
}

std::string arrival_refusal_words(const MoveRefusal& refusal, const supply::Arrival& arrival,
                                  const supply::StockView& view) {
  switch (refusal.kind) {
    case MoveRefusal::no_quantity:
      return said("Say how many pieces came, or that none came and the rest is lost.");
    case MoveRefusal::no_target:
      return said("Say at which place the pieces arrived.");
    case MoveRefusal::none_there:
      return say("Nothing of {} is on its way to {}: {}.", wanted_name(refusal.wanted), arrival.to,
                 elsewhere(refusal.wanted, refusal.there));
    case MoveRefusal::no_reason:
      return say_n("{} of {} was sent to {} and {} came; give a reason for the difference.",
                   "{} of {} were sent to {} and {} came; give a reason for the difference.",
                   static_cast<unsigned long>(refusal.there.front().quantity),
                   refusal.there.front().quantity, lot_name(refusal.there.front().lot), arrival.to,
                   arrival.quantity.value_or(0));
    default:
      return move_refusal_words(refusal, view);
  }
}

std::vector<std::string> arrival_notes(const supply::ArrivalMove& arrived) {
  std::vector<std::string> notes;
  if (arrived.extra > 0) {
    notes.push_back(say_n("{} more came than was sent; booked as counted.",
                          "{} more came than were sent; booked as counted.",
                          static_cast<unsigned long>(arrived.extra), arrived.extra));
  }
  if (arrived.lost > 0) {
    notes.push_back(say_n("{} did not arrive and is written off.",
                          "{} did not arrive and are written off.",
                          static_cast<unsigned long>(arrived.lost), arrived.lost));
  }
  if (arrived.still_out > 0) {
    notes.push_back(say_n("{} piece is still to arrive.", "{} pieces are still to arrive.",
                          static_cast<unsigned long>(arrived.still_out),
                          number_words(arrived.still_out)));
  }
  return notes;
}

std::string loan_refusal_words(const supply::LoanRefusal& refusal, const Loan& loan) {
  using Kind = supply::LoanRefusal::Kind;
  switch (refusal.kind) {
    case Kind::nothing:
      return said("Say how many pieces came back, are kept or are lost.");
    case Kind::too_many:
      return say_n("Only {} piece of loan {} is still out; check the number of pieces.",
                   "Only {} pieces of loan {} are still out; check the number of pieces.",
                   static_cast<unsigned long>(loan.outstanding()), number_words(loan.outstanding()),
                   loan.number);
    case Kind::no_place:
      return said("Say where the pieces that came back are put.");
    case Kind::bad_place:
      return said("What comes back goes to a store or into quarantine; name such a place.");
    case Kind::no_reason:
      return said("Give a reason for what is lost or goes into quarantine.");
    case Kind::not_there:
      return say(
          "The ledger has {} of {} on loan, fewer than this; the loan place was counted otherwise: "
          "correct that count first.",
          refusal.there, lot_name(loan.lot));
  }
  return {};
}

std::string credit_refusal_words(const supply::CreditRefusal& refusal, const SupplierReturn& sent) {
  using Kind = supply::CreditRefusal::Kind;
  switch (refusal.kind) {
    case Kind::closed:
      return say("Return {} was settled on {}; nothing is due any more.", sent.number,
                 date_words(sent.closed_on, ""));
    case Kind::nothing:
      return said(
          "Give the amount credited, or say that no more will come, or where the pieces are now.");
    case Kind::negative:
      return said("A credit is not below zero.");
    case Kind::other_currency:
      return say("The credit is due in {}; give the amount in that currency.",
                 refusal.outstanding->currency.code);
    case Kind::too_much:
      return say(
          "Only {} is still due for return {}; check the credit note, or say that more is right.",
          amount_words(*refusal.outstanding), sent.number);
    case Kind::bad_place:
      return said(
          "What the supplier sends back goes to a store or into quarantine; name such a place.");
    case Kind::not_there:
      return say(
          "The ledger has only {} of {} at {}; that place was counted otherwise: correct that "
          "count first.",
          refusal.there, lot_name(sent.lot), sent.supplier.text);
  }
  return {};
}

std::string reversal_refusal(const store::Booking& booking, const std::string& reason) {
  if (booking.reversed_by) {
    return say("Booking {} was taken back already, by booking {}.", booking.id.value,
               booking.reversed_by->value);
  }
  if (booking.wrote_more) {
    return say(
        "Booking {} belongs to an order, an issue, a loan, a return or an earlier reversal and is "
        "put right there; it is not taken back by itself.",
        booking.id.value);
  }
  if (reason.empty()) return said("Give a reason; it is kept with the movement.");
  return {};
}

std::string moved_on_words(const store::Booking& booking, const StockLevel& level) {
  return say_n(
      "Booking {} cannot be taken back: only {} of {} lies at {}; take back first what moved it "
      "on.",
      "Booking {} cannot be taken back: only {} of {} lie at {}; take back first what moved it on.",
      static_cast<unsigned long>(level.quantity), booking.id.value, level.quantity,
      lot_name(level.lot), shown_place(level.place));
}

std::string place_refusal(const Place& place, const std::optional<Place>& known, int there) {
  if (is_name_of_program(place.name)) {
    return say("The program keeps the place {} itself; choose another name.",
               shown_place(place.name));
  }
  const auto before = known ? *known : Place{place.name, sort_of_place({}, place.name), {}};
  if (known && before == place) {
    return say("{} is recorded as \"{}\" already.", place.name, shown_word(place.sort));
  }
  // Stock is never released from quarantine by renaming what it lies in.
  if (there > 0 && before.sort == PlaceSort::quarantine && place.sort != PlaceSort::quarantine) {
    return say_n(
        "{} piece lies in quarantine at {}; release it before the place changes its sort.",
        "{} pieces lie in quarantine at {}; release them before the place changes its sort.",
        static_cast<unsigned long>(there), number_words(there), place.name);
  }
  return {};
}

}  // namespace sparewell::desk
