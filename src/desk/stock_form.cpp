#include "desk/stock_form.hpp"

#include <algorithm>
#include <charconv>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/stock_list.hpp"
#include "desk/stock_owed.hpp"
#include "desk/stock_refusals.hpp"
#include "desk/stock_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using Answers = std::vector<std::string>;

constexpr int most_pieces = 1'000'000;
constexpr const char* sent_later = to_say("They are sent and arrive later");
constexpr const char* there_already = to_say("They are there already");

Expected<int> count_of(const std::string& text, const char* what, int least) {
  int number = 0;
  const auto* end = text.data() + text.size();
  const auto [stopped, error] = std::from_chars(text.data(), end, number);
  if (text.empty() && least == 0) return 0;
  if (error != std::errc{} || stopped != end || number < least || number > most_pieces) {
    return refuse(say("{}: write a whole number from {} on.", what, least));
  }
  return number;
}

Expected<supply::Pieces> pieces_of(const StockLevel& level, const std::string& quantity) {
  const auto count = count_of(quantity, said("Pieces"), 1);
  if (!count) return tl::unexpected{count.error()};
  return supply::Pieces{level.lot.item, level.lot.lot, level.lot.use_by, level.place, *count};
}

std::vector<std::string> names_of(const Clinic& clinic, PlaceSort sort, const std::string& but) {
  std::vector<std::string> names;
  for (const auto& place : all_places(clinic)) {
    if (place.sort == sort && place.name != but) names.push_back(place.name);
  }
  return names;
}

std::string first_of(const std::vector<std::string>& names, const std::string& otherwise) {
  return names.empty() ? otherwise : names.front();
}

FormField pieces_field(const StockLevel& level) {
  return {said("&Pieces"), "1", say("From 1 to {}", level.quantity)};
}

StockForm move_form(const Day& day, const StockLevel& level) {
  const auto stores = names_of(day.clinic(), PlaceSort::store, level.place);
  StockForm form{said("Move"), {}, {}, said("&Move"), {}, to_say("stock was moved")};
  form.fields = {
      pieces_field(level),
      {said("&To"), first_of(stores, ""), said("The branch or shelf where they go"), stores},
      {said("&How"),
       sent_later,
       said("Pieces that are sent lie in transit until they arrive"),
       {sent_later, there_already},
       true},
      {said("&Reason"), "", said("Kept with the movement; may be empty")}};
  form.book = [level, today = day.today()](store::UnitOfWork& work,
                                           const Answers& given) -> Expected<Booked> {
    const auto pieces = pieces_of(level, given[0]);
    if (!pieces) return tl::unexpected{pieces.error()};
    const auto travel = given[2] == sent_later ? supply::Travel::sent : supply::Travel::at_once;
    return book_transfer(work, *pieces, given[1], travel, today, given[3]);
  };
  return form;
}

StockForm quarantine_form(const Day& day, const StockLevel& level) {
  const bool out = sort_of_place(day.clinic().places, level.place) == PlaceSort::quarantine;
  auto places = names_of(day.clinic(), out ? PlaceSort::store : PlaceSort::quarantine, level.place);
  const auto usual =
      out ? day.clinic().settings.main_place : first_of(places, supply::usual_quarantine);
  StockForm form{out ? said("Release from quarantine") : said("Quarantine"),
                 {},
                 {},
                 out ? said("&Release") : said("&Quarantine"),
                 {},
                 to_say("stock was held back or released")};
  form.fields = {
      pieces_field(level),
      {said("&To"), usual, out ? said("The store where they go") : said("The quarantine"), places},
      {said("&Reason"), "",
       out ? said("Why they may be handed out again") : said("Why they may not be handed out")}};
  form.book = [level, out, today = day.today()](store::UnitOfWork& work,
                                                const Answers& given) -> Expected<Booked> {
    const auto pieces = pieces_of(level, given[0]);
    if (!pieces) return tl::unexpected{pieces.error()};
    return out ? book_release(work, *pieces, given[1], today, given[2])
               : book_quarantine(work, *pieces, given[1], today, given[2]);
  };
  return form;
}

StockForm write_off_form(const Day& day, const StockLevel& level) {
  std::vector<std::string> whys;
  for (const auto why : words<supply::WriteOff>()) whys.emplace_back(why);
  const bool expired = level.lot.use_by && *level.lot.use_by < day.today();
  StockForm form{said("Write off"),  {}, {},
                 said("&Write off"), {}, to_say("stock was written off")};
  form.fields = {
      pieces_field(level),
      {said("&Why"), expired ? whys[0] : whys[1], said("What became of them"), whys, true},
      {said("&Note"), "", said("More about it; may be empty")}};
  form.book = [level, today = day.today()](store::UnitOfWork& work,
                                           const Answers& given) -> Expected<Booked> {
    const auto pieces = pieces_of(level, given[0]);
    if (!pieces) return tl::unexpected{pieces.error()};
    return book_write_off(work, *pieces, *parse_word<supply::WriteOff>(given[1]), today, given[2]);
  };
  return form;
}

StockForm return_form(const Day& day, const StockLevel& level) {
  std::vector<std::string> suppliers;
  for (const auto& supplier : day.clinic().suppliers) suppliers.push_back(supplier.name.text);
  const auto* item = day.index().item(level.lot.item);
  StockForm form{said("Return to supplier"), {}, {},
                 said("Se&nd back"),         {}, to_say("stock was sent back")};
  form.fields = {
      pieces_field(level),
      {said("&Supplier"), item ? item->supplier.text : "", said("Who takes them back"), suppliers},
      {said("Re&ference"), "", said("The number of the return, or your own reference")},
      {said("&Credit due"), "",
       item && item->unit_cost
           ? say("For all pieces; empty for the unit cost, {} each", amount_words(*item->unit_cost))
           : std::string{said("For all pieces; the catalogue has no unit cost")}},
      {said("&Reason"), "", said("Why they go back")}};
  form.book = [level, today = day.today()](store::UnitOfWork& work,
                                           const Answers& given) -> Expected<Booked> {
    const auto pieces = pieces_of(level, given[0]);
    if (!pieces) return tl::unexpected{pieces.error()};
    return book_return(work, {*pieces, given[1], given[2], given[3], given[4]}, today);
  };
  return form;
}

StockForm lend_form(const Day& day, const StockLevel& level) {
  constexpr days usual_trial{14};
  StockForm form{said("Lend"), {}, {}, said("&Lend"), {}, to_say("a part was lent to a patient")};
  form.fields = {pieces_field(level),
                 {said("P&atient"), "", said("The clinic's reference for the patient")},
                 {said("&Side"),
                  to_say("left"),
                  said("The side that it is for"),
                  {to_say("left"), to_say("right")},
                  true},
                 {said("&Until"), iso_text(day.today() + usual_trial),
                  said("The last day, such as 2026-12-31")},
                 {said("&Note"), "", said("What the trial is for; may be empty")},
                 {said("&Decided by"), "",
                  said("Only where a check stops it: the clinician who decides to lend it")},
                 {said("&Because"), "", said("The clinician's reason; it is kept with the loan")}};
  form.book = [level, today = day.today()](store::UnitOfWork& work,
                                           const Answers& given) -> Expected<Booked> {
    const auto pieces = pieces_of(level, given[0]);
    if (!pieces) return tl::unexpected{pieces.error()};
    const auto until = parse_iso_date(given[3]);
    if (!until) return refuse(say("Until: write the day as 2026-12-31."));
    return book_loan(
        work,
        {*pieces, given[1], *parse_word<Side>(given[2]), *until, given[4], given[5], given[6]},
        today);
  };
  return form;
}

std::vector<std::string> split(const std::string& text) {
  std::vector<std::string> parts;
  std::string part;
  for (const char c : text) {
    if (c != ';') {
      if (c != ' ' || !part.empty()) part += c;
      continue;
    }
    if (!part.empty()) parts.push_back(part);
    part.clear();
  }
  if (!part.empty()) parts.push_back(part);
  return parts;
}

std::vector<std::string> stores_and_quarantines(const Clinic& clinic) {
  auto names = names_of(clinic, PlaceSort::store, "");
  for (auto& name : names_of(clinic, PlaceSort::quarantine, "")) names.push_back(std::move(name));
  return names;
}

StockForm form_of(const Day& day, const Loan& loan) {
  StockForm form{said("End of a loan"), {}, {}, said("&Record"), {}, to_say("a loan ended")};
  form.intro = say("{} of {} with {} since {}.", loan.outstanding(), lot_name(loan.lot),
                   loan.patient.text, date_words(loan.lent_on));
  form.fields = {
      {said("Came &back"), std::to_string(loan.outstanding()), said("Pieces that came back")},
      {said("Put &to"), day.clinic().settings.main_place, said("Where those are put"),
       stores_and_quarantines(day.clinic())},
      {said("&Kept"), "0", said("Pieces that the patient keeps; they are issued")},
      {said("&Serial numbers"), "", said("Of the kept pieces, separated by ;")},
      {said("&Lost"), "0", said("Pieces that are lost")},
      {said("R&eason"), "", said("Needed for what is lost or goes into quarantine")}};
  form.book = [number = loan.number, today = day.today()](
                  store::UnitOfWork& work, const Answers& given) -> Expected<Booked> {
    const auto back = count_of(given[0], said("Came back"), 0);
    const auto kept = count_of(given[2], said("Kept"), 0);
    const auto lost = count_of(given[4], said("Lost"), 0);
    for (const auto* count : {&back, &kept, &lost}) {
      if (!*count) return tl::unexpected{count->error()};
    }
    return book_loan_end(work, {number, {*back, given[1], *kept, *lost, given[5]}, split(given[3])},
                         today);
  };
  return form;
}

StockForm form_of(const Day& day, const SupplierReturn& sent) {
  static const std::vector<std::string> outcomes{
      to_say("More will come if this is less than is due"), to_say("Nothing more will come"),
      to_say("The supplier sent the pieces back"),
      to_say("More than is due was credited, and is right")};
  const auto rest = sent.outstanding();
  StockForm form{said("Credit of a return"),
                 {},
                 {},
                 said("&Record"),
                 {},
                 to_say("a supplier answered a return")};
  form.intro = say("{} of {}, sent to {} on {} ({}).", sent.quantity, lot_name(sent.lot),
                   sent.supplier.text, date_words(sent.sent_on), sent.reference);
  form.fields = {
      {said("&Amount"), rest ? plain_text(*rest) : "",
       rest ? say("{} due", amount_words(*rest)) : std::string{said("What is due is not known")}},
      {said("&Outcome"), outcomes[0], said("What happens to the rest"), outcomes, true},
      {said("Put &to"), supply::usual_quarantine, said("Where pieces that came back are put"),
       stores_and_quarantines(day.clinic())},
      {said("R&eason"), "", said("Kept with the movement; may be empty")}};
  form.book = [number = sent.number, today = day.today()](
                  store::UnitOfWork& work, const Answers& given) -> Expected<Booked> {
    CreditRequest request{number, given[0], given[1] == outcomes[1], given[1] == outcomes[3],
                          "",     given[3]};
    if (given[1] == outcomes[2]) request.back_to = given[2];
    return book_credit(work, request, today);
  };
  return form;
}

StockForm form_of(const Day& day, const StockLevel& level) {
  static const std::vector<std::string> rests{to_say("The rest is still to come"),
                                              to_say("The rest is lost")};
  const auto to = [&] {
    for (const auto& place : day.clinic().places) {
      if (place.name == level.place) return place.leads_to;
    }
    return std::string{};
  }();
  StockForm form{said("Arrival"), {}, {}, said("&Record"), {}, to_say("a transfer arrived")};
  form.intro = say("{} of {}, {}.", level.quantity, lot_name(level.lot), shown_place(level.place));
  form.fields = {
      {said("&Pieces"), std::to_string(level.quantity), said("How many came")},
      {said("Re&st"), rests[0], said("What became of pieces that did not come"), rests, true},
      {said("R&eason"), "", said("Needed when more or fewer came than were sent")}};
  form.book = [level, to, today = day.today()](store::UnitOfWork& work,
                                               const Answers& given) -> Expected<Booked> {
    const auto came = count_of(given[0], said("Pieces"), 0);
    if (!came) return tl::unexpected{came.error()};
    return book_arrival(work,
                        {level.lot.item, level.lot.lot, level.lot.use_by, to, *came,
                         given[1] == rests[1], given[2]},
                        today);
  };
  return form;
}

StockForm form_for(LotAction action, const Day& day, const StockLevel& level) {
  switch (action) {
    case LotAction::move:
      return move_form(day, level);
    case LotAction::quarantine:
      return quarantine_form(day, level);
    case LotAction::write_off:
      return write_off_form(day, level);
    case LotAction::send_back:
      return return_form(day, level);
    default:
      return lend_form(day, level);
  }
}

/// "LS10, lot A: 3 pieces lie at main store, use by 1 Dec 2026."
std::string lying_words(const StockLevel& level) {
  const auto count = static_cast<unsigned long>(level.quantity);
  const auto pieces = number_words(level.quantity);
  if (!level.lot.use_by) {
    return say_n("{}: {} piece lies at {}.", "{}: {} pieces lie at {}.", count, lot_name(level.lot),
                 pieces, shown_place(level.place));
  }
  return say_n("{}: {} piece lies at {}, use by {}.", "{}: {} pieces lie at {}, use by {}.", count,
               lot_name(level.lot), pieces, shown_place(level.place),
               date_words(*level.lot.use_by));
}

}  // namespace

StockForm lot_form(LotAction action, const Day& day, const StockLevel& level) {
  auto form = form_for(action, day, level);
  form.intro = lying_words(level);
  return form;
}

StockForm away_form(const Day& day, const Away& away) {
  return std::visit([&](const auto& record) { return form_of(day, record); }, away);
}

StockForm place_form(const Day& day) {
  std::vector<std::string> names;
  std::vector<std::string> known;
  for (const auto& place : all_places(day.clinic())) {
    known.push_back(place_words(place));
    if (!is_name_of_program(place.name)) names.push_back(place.name);
  }
  std::vector<std::string> sorts;
  for (const auto sort : words<PlaceSort>()) sorts.emplace_back(sort);
  StockForm form{said("Places"), {}, {}, said("&Record"), {}, to_say("a place was recorded")};
  form.intro = say("Only pieces in a store count as on hand.\n{}", fmt::join(known, "\n"));
  form.fields = {{said("&Name"), "", said("A new place, or one that gets another sort"), names},
                 {said("&Sort"), sorts[0], said("What lying there means"), sorts, true}};
  form.book = [](store::UnitOfWork& work, const Answers& given) -> Expected<Booked> {
    const Place place{given[0], *parse_word<PlaceSort>(given[1]), {}};
    auto booked = book_place(work, place);
    if (booked) booked->notes.push_back(say("Recorded {}.", place_words(place)));
    return booked;
  };
  return form;
}

Expected<StockForm> reversal_form(const ClinicFile& file, const ItemCode& item) {
  constexpr int most = 30;
  std::vector<std::string> choices;
  std::vector<store::RowId> bookings;
  for (const auto& booking : open_store(file)->read()->bookings_of(item, most)) {
    if (booking.wrote_more || booking.reversed_by) continue;
    const auto lines = booking_lines(booking, item);
    choices.push_back(lines.size() < 2 ? lines[0] : fmt::format("{};{}", lines[0], lines[1]));
    bookings.push_back(booking.id);
  }
  if (bookings.empty()) {
    return refuse(
        say("No booking of {} can be taken back by itself: orders, issues, loans and returns are "
            "put right where they are.",
            item.text));
  }
  StockForm form{said("Take a booking back"), {}, {},
                 said("&Take back"),          {}, to_say("a booking was taken back")};
  form.intro = say("{}: everything that the booking moved goes back.", item.text);
  form.fields = {{said("&Booking"), choices[0], said("The newest first"), choices, true},
                 {said("&Reason"), "", said("Why it was a mistake")}};
  form.book = [choices, bookings, today = file.today](store::UnitOfWork& work,
                                                      const Answers& given) -> Expected<Booked> {
    const auto at = std::ranges::find(choices, given[0]) - choices.begin();
    return book_reversal(work, bookings.at(static_cast<std::size_t>(at)), today, given[1]);
  };
  return form;
}

Expected<Booked> book_form(const ClinicFile& file, const StockForm& form, const Answers& answers) {
  const auto store = open_store(file);
  return in_one_work(*store, {file.who, form.why},
                     [&](store::UnitOfWork& work) { return form.book(work, answers); });
}

}  // namespace sparewell::desk
