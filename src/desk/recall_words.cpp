#include "desk/recall_words.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/day.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using Lines = std::vector<std::string>;
using supply::LotMatch;
using supply::Recall;

long long pieces(const Recall& recall, PlaceSort sort) {
  long long sum = 0;
  for (const auto& stock : recall.stock) {
    if (stock.sort == sort) sum += stock.level.quantity;
  }
  return sum;
}

/// ", 2 in transit and 1 on loan"; "" when nothing is away.
std::string away_words(const Recall& recall) {
  std::vector<std::string> parts;
  for (const auto sort : {PlaceSort::in_transit, PlaceSort::on_loan, PlaceSort::at_supplier}) {
    if (const auto sum = pieces(recall, sort); sum > 0) {
      parts.push_back(fmt::format("{} {}", number_words(sum), shown_word(sort)));
    }
  }
  return parts.empty() ? std::string{} : fmt::format(", {}", list_words(parts));
}

/// "; look at it: its lot was not recorded" for pieces that may be of another lot.
std::string doubt_words(LotMatch match) {
  switch (match) {
    case LotMatch::recalled:
      return {};
    case LotMatch::written_alike:
      return said("; its lot is written differently: look at the part");
    default:
      return said("; its lot is not recorded: look at the part");
  }
}

std::string unit_words(const supply::RecalledUnit& recalled) {
  const Unit& unit = recalled.unit;
  std::string text =
      say("{}, {}, issued {}", shown_word(unit.side), lot_words(unit), date_words(unit.issued_on));
  if (unit.ended_on) {
    text += say(", ended {}", date_words(*unit.ended_on));
    if (unit.end_reason) text += fmt::format(" ({})", shown_word(*unit.end_reason));
  }
  return text + doubt_words(recalled.match);
}

void add_patient(Lines& lines, const supply::RecalledPatient& recalled, Names names) {
  const Patient& patient = recalled.patient;
  std::string text = fmt::format("  {}", patient.ref.text);
  if (const auto name = full_name(patient); names == Names::shown && !name.empty()) {
    text += fmt::format("  {}", name);
  }
  if (recalled.in_hands()) {
    text += patient.next_visit ? say("  next visit {}", date_words(*recalled.visit))
                               : std::string{said("  no visit is booked")};
  }
  lines.push_back(std::move(text));
  for (const auto& unit : recalled.units) lines.push_back("    " + unit_words(unit));
}

void add_patients(Lines& lines, const Recall& recall, bool in_hands, Names names) {
  for (const auto& patient : recall.patients) {
    if (patient.in_hands() == in_hands) add_patient(lines, patient, names);
  }
}

void add_title(Lines& lines, const std::string& title, std::size_t count) {
  if (count == 0) return;
  lines.emplace_back();
  lines.push_back(title);
}

std::string number_of(const Lot& lot) {
  return lot.lot.empty() ? said("no lot recorded") : say("lot {}", lot.lot);
}

std::string stock_words(const supply::RecalledStock& stock) {
  const auto& [lot, place, quantity] = stock.level;
  return fmt::format(
      "  {}: {}, {}, {}{}", place, count_words(quantity, "piece", "pieces"), number_of(lot),
      lot.use_by ? say("use by {}", date_words(*lot.use_by)) : said("no use-by date recorded"),
      doubt_words(stock.match));
}

std::string loan_words(const supply::RecalledLoan& lent) {
  const Loan& loan = lent.loan;
  return say("  {}  loan {}: {}, {}, {}, lent {}, due {}{}", loan.patient.text, loan.number,
             count_words(loan.outstanding(), "piece", "pieces"), shown_word(loan.side),
             number_of(loan.lot), date_words(loan.lent_on), date_words(loan.due_on),
             doubt_words(lent.match));
}

std::string order_words(const OrderLine& line) {
  if (line.state == OrderState::draft) {
    return say("  {}  {}: a draft of {}, not sent yet", line.order_ref, line.supplier.text,
               count_words(line.quantity, "piece", "pieces"));
  }
  return say("  {}  {}: {} of {} to come, ordered {}", line.order_ref, line.supplier.text,
             number_words(line.outstanding()), count_words(line.quantity, "piece", "pieces"),
             date_words(line.ordered_on));
}

/// Recorded lots help to see a slip in the number that was asked for.
void add_other_lots(Lines& lines, const Recall& recall) {
  if (recall.lot.empty() || recall.other_lots.empty()) return;
  constexpr std::size_t most = 12;
  const auto shown = std::min(most, recall.other_lots.size());
  std::string text =
      say("Other recorded lots of the item, not on this list: {}",
          fmt::join(recall.other_lots.begin(),
                    recall.other_lots.begin() + static_cast<std::ptrdiff_t>(shown), ", "));
  if (shown < recall.other_lots.size()) {
    text += say(" and {} more", recall.other_lots.size() - shown);
  }
  lines.emplace_back();
  lines.push_back(text + ".");
}

}  // namespace

std::string recall_summary(const Recall& recall) {
  if (!recall.touches_anything()) {
    return said(
        "Nothing is recorded of it. That proves nothing about parts that nobody recorded: look "
        "on the shelves.");
  }
  const auto having = std::ranges::count_if(recall.patients, &supply::RecalledPatient::in_hands);
  const auto had = std::ssize(recall.patients) - having;
  const auto on_shelves = pieces(recall, PlaceSort::store);
  return say("{}, {} had one; {} and {} in quarantine{}; {}.",
             say_n("{} patient has a part of it", "{} patients have a part of it",
                   static_cast<unsigned long>(having), number_words(having)),
             number_words(had),
             say_n("{} piece is on shelves", "{} pieces are on shelves",
                   static_cast<unsigned long>(on_shelves), number_words(on_shelves)),
             number_words(pieces(recall, PlaceSort::quarantine)), away_words(recall),
             say_n("{} order line is open", "{} order lines are open", recall.orders.size(),
                   number_words(std::ssize(recall.orders))));
}

std::vector<std::string> recall_lines(const RecallNotice& notice, Names names) {
  const Recall& recall = notice.found;
  Lines lines;
  lines.push_back(
      say("Recall of {}, {}, {}", recall.item.text, item_words(notice.item),
          recall.lot.empty() ? std::string{said("all lots")} : say("lot {}", recall.lot)));
  lines.push_back(recall_summary(recall));
  const auto having = std::ranges::count_if(recall.patients, &supply::RecalledPatient::in_hands);
  add_title(lines, said("Patients who have a part of it"), static_cast<std::size_t>(having));
  add_patients(lines, recall, true, names);
  add_title(lines, said("Patients who had a part of it"),
            recall.patients.size() - static_cast<std::size_t>(having));
  add_patients(lines, recall, false, names);
  add_title(lines, said("Patients who have a part of it on loan"), recall.loans.size());
  for (const auto& lent : recall.loans) lines.push_back(loan_words(lent));
  add_title(lines, said("Stock"), recall.stock.size());
  for (const auto& stock : recall.stock) lines.push_back(stock_words(stock));
  add_title(lines, said("Open orders, which may bring more of it"), recall.orders.size());
  for (const auto& line : recall.orders) lines.push_back(order_words(line));
  add_other_lots(lines, recall);
  lines.emplace_back();
  lines.push_back(recall_caution());
  return lines;
}

std::vector<std::string> quarantine_lines(const std::vector<StockLevel>& moved) {
  if (moved.empty()) return {said("Nothing had to be moved to quarantine.")};
  Lines lines;
  for (const auto& [lot, place, quantity] : moved) {
    lines.push_back(say(
        "{} of {} moved from {} to quarantine.", count_words(quantity, "piece", "pieces"),
        lot.lot.empty() ? std::string{said("no recorded lot")} : say("lot {}", lot.lot), place));
  }
  return lines;
}

std::string lot_match_words(LotMatch match) {
  switch (match) {
    case LotMatch::recalled:
      return "recalled";
    case LotMatch::written_alike:
      return "written alike";
    default:
      return "not recorded";
  }
}

std::string recall_caution() {
  return said(
      "Tell patients what to do only as the maker's notice and the treating clinician say. This "
      "list shows what the clinic recorded: a part that was never recorded is not on it.");
}

}  // namespace sparewell::desk
