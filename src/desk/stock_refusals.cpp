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
  const auto lot = level.lot.lot.empty() ? std::string{said("no lot number")}
                                         : fmt::format("lot {}", level.lot.lot);
  const auto pieces = count_words(level.quantity, "piece", "pieces");
  if (!level.lot.use_by) return fmt::format("{} ({})", lot, pieces);
  return say("{} ({}, use by {})", lot, pieces, date_words(*level.lot.use_by));
}

std::string lots_there(const std::vector<StockLevel>& levels) {
  constexpr std::size_t most = 6;
  std::vector<std::string> parts;
  for (const auto& level : levels) {
    if (parts.size() == most) {
      parts.push_back(fmt::format("{} more", levels.size() - most));
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
      parts.emplace_back("elsewhere");
      break;
    }
    const auto which = wanted.lot ? std::to_string(level.quantity)
                                  : fmt::format("{} of {}", level.quantity, lot_name(level.lot));
    parts.push_back(fmt::format("{} at {}", which, level.place));
  }
  if (parts.empty()) return said("none lies anywhere");
  return say("there are {}", list_words(parts));
}

std::string to_be_settled_words(const std::string& place, PlaceSort sort) {
  switch (sort) {
    case PlaceSort::in_transit:
      return say("What is {} must arrive first; record its arrival.", place);
    case PlaceSort::on_loan:
      return said("What is on loan is with a patient; record what became of the loan.");
    default:
      return say("What is {} waits for its credit; record what the supplier answered.", place);
  }
}

std::string target_no_place_words(const std::string& to, PlaceSort sort) {
  switch (sort) {
    case PlaceSort::in_transit:
      return say("Nothing is put {} by hand; send it to the place itself.", to);
    case PlaceSort::on_loan:
      return said("To lend a part, name the patient and the day until which it is lent.");
    default:
      return said("To send a part back to its supplier, record a return.");
  }
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
      return say("Nothing of {} lies at {}: {}.", wanted_name(wanted), wanted.place,
                 elsewhere(wanted, refusal.there));
    case MoveRefusal::several_lots:
      return say(
          "Several lots of {} lie at {}: {}; name the lot, and its use-by date "
          "where two have one number.",
          wanted.item.text, wanted.place, lots_there(refusal.there));
    case MoveRefusal::too_few:
      return say("Only {} of {} {} at {}; {} cannot leave it.", refusal.there.front().quantity,
                 lot_name(refusal.there.front().lot),
                 refusal.there.front().quantity == 1 ? "lies" : "lie", wanted.place,
                 wanted.quantity);
    case MoveRefusal::same_place:
      return say("The pieces lie at {} already; name another place.", refusal.to);
    case MoveRefusal::held_back:
      return say("What lies at {} is in quarantine; release it first.", wanted.place);
    case MoveRefusal::not_held_back:
      return say("{} is not a quarantine; only what is in quarantine is released.", wanted.place);
    case MoveRefusal::target_no_store:
      return say("{} is not a store but \"{}\"; name a branch or a shelf.", refusal.to,
                 word(view.place(refusal.to).sort));
    case MoveRefusal::target_not_held_back:
      return say("{} is not a quarantine but \"{}\"; name one, or record the place as one.",
                 refusal.to, word(view.place(refusal.to).sort));
    case MoveRefusal::target_no_place:
      return target_no_place_words(refusal.to, view.place(refusal.to).sort);
    case MoveRefusal::to_be_settled:
      return to_be_settled_words(wanted.place, view.place(wanted.place).sort);
    case MoveRefusal::not_expired:
      return say("{} is not expired: {}; say damaged or lost.", lot_name(refusal.there.front().lot),
                 refusal.there.front().lot.use_by
                     ? say("its use-by date is {}", date_words(*refusal.there.front().lot.use_by))
                     : std::string{said("it has no use-by date")});
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
      return say("{} of {} {} sent to {} and {} came; give a reason for the difference.",
                 refusal.there.front().quantity, lot_name(refusal.there.front().lot),
                 refusal.there.front().quantity == 1 ? "was" : "were", arrival.to,
                 arrival.quantity.value_or(0));
    default:
      return move_refusal_words(refusal, view);
  }
}

std::vector<std::string> arrival_notes(const supply::ArrivalMove& arrived) {
  std::vector<std::string> notes;
  if (arrived.extra > 0) {
    notes.push_back(say("{} more came than {} sent; booked as counted.", arrived.extra,
                        arrived.extra == 1 ? "was" : "were"));
  }
  if (arrived.lost > 0) {
    notes.push_back(say("{} did not arrive and {} written off.", arrived.lost,
                        arrived.lost == 1 ? "is" : "are"));
  }
  if (arrived.still_out > 0) {
    notes.push_back(
        say("{} still to arrive.", count_words(arrived.still_out, "piece is", "pieces are")));
  }
  return notes;
}

std::string loan_refusal_words(const supply::LoanRefusal& refusal, const Loan& loan) {
  using Kind = supply::LoanRefusal::Kind;
  switch (refusal.kind) {
    case Kind::nothing:
      return said("Say how many pieces came back, are kept or are lost.");
    case Kind::too_many:
      return say("Only {} of loan {} {} still out; check the number of pieces.",
                 count_words(loan.outstanding(), "piece", "pieces"), loan.number,
                 loan.outstanding() == 1 ? "is" : "are");
    case Kind::no_place:
      return said("Say where the pieces that came back are put.");
    case Kind::bad_place:
      return said("What comes back goes to a store or into quarantine; name such a place.");
    case Kind::no_reason:
      return said("Give a reason for what is lost or goes into quarantine.");
    case Kind::not_there:
      return say(
          "The ledger has {} of {} on loan, fewer than this; the loan place was "
          "counted otherwise: correct that count first.",
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
          "Give the amount credited, or say that no more will come, or where the pieces are "
          "now.");
    case Kind::negative:
      return said("A credit is not below zero.");
    case Kind::other_currency:
      return say("The credit is due in {}; give the amount in that currency.",
                 refusal.outstanding->currency.code);
    case Kind::too_much:
      return say(
          "Only {} is still due for return {}; check the credit note, or say that "
          "more is right.",
          amount_words(*refusal.outstanding), sent.number);
    case Kind::bad_place:
      return said(
          "What the supplier sends back goes to a store or into quarantine; name such a place.");
    case Kind::not_there:
      return say(
          "The ledger has only {} of {} at {}; that place was counted otherwise: "
          "correct that count first.",
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
        "Booking {} belongs to an order, an issue, a loan, a return or an earlier "
        "reversal and is put right there; it is not taken back by itself.",
        booking.id.value);
  }
  if (reason.empty()) return said("Give a reason; it is kept with the movement.");
  return {};
}

std::string moved_on_words(const store::Booking& booking, const StockLevel& level) {
  return say(
      "Booking {} cannot be taken back: only {} of {} {} at {}; take back first what "
      "moved it on.",
      booking.id.value, level.quantity, lot_name(level.lot), level.quantity == 1 ? "lies" : "lie",
      level.place);
}

std::string place_refusal(const Place& place, const std::optional<Place>& known, int there) {
  if (is_name_of_program(place.name)) {
    return say("The program keeps the place {} itself; choose another name.", place.name);
  }
  const auto before = known ? *known : Place{place.name, sort_of_place({}, place.name), {}};
  if (known && before == place) {
    return say("{} is recorded as \"{}\" already.", place.name, word(place.sort));
  }
  // Stock is never released from quarantine by renaming what it lies in.
  if (there > 0 && before.sort == PlaceSort::quarantine && place.sort != PlaceSort::quarantine) {
    return say("{} in quarantine at {}; release {} before the place changes its sort.",
               count_words(there, "piece lies", "pieces lie"), place.name,
               there == 1 ? "it" : "them");
  }
  return {};
}

}  // namespace sparewell::desk
