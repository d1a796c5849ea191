#include "desk/billing/both_sides.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string amount(const std::optional<Money>& money, const char* otherwise) {
  return money ? amount_words(*money) : std::string{otherwise};
}

std::string side_part(const std::optional<Side>& side) {
  return side ? fmt::format(", {}", shown_word(*side)) : std::string{};
}

/// " LT RA": behind a code.
std::string modifier_part(const std::vector<std::string>& modifiers) {
  return modifiers.empty() ? std::string{} : fmt::format(" {}", fmt::join(modifiers, " "));
}

template <class Record>
void add_lines(std::vector<std::string>& lines, const std::vector<Record>& records,
               const std::vector<std::size_t>& places) {
  for (const std::size_t place : places) lines.push_back(record_line(records.at(place)));
}

/// Units that are alike are told once with their count.
void add_units(std::vector<std::string>& lines, const Clinic& clinic,
               const std::vector<std::size_t>& places) {
  std::vector<std::pair<std::string, int>> told;
  for (const std::size_t place : places) {
    auto line = record_line(clinic.units.at(place));
    if (!told.empty() && told.back().first == line) {
      ++told.back().second;
    } else {
      told.emplace_back(std::move(line), 1);
    }
  }
  for (const auto& [line, count] : told) {
    lines.push_back(count == 1 ? line : fmt::format("{} x {}", count, line));
  }
}

}  // namespace

std::string record_line(const Unit& unit) {
  auto line = say("{}, {}: {}, {}, issued {}", unit.patient.text, shown_word(unit.side),
                  unit.item.text, lot_words(unit), date_words(unit.issued_on));
  if (unit.ended_on) {
    line += say(", ended {}{}", date_words(*unit.ended_on),
                unit.end_reason ? fmt::format(" ({})", shown_word(*unit.end_reason)) : "");
  }
  return line;
}

std::string record_line(const ClaimLine& line) {
  auto text = say("{}, {}{}: {} of {}{}, {}, {}", line.claim_ref, line.patient.text,
                  side_part(line.side), line.quantity, line.code, modifier_part(line.modifiers),
                  date_words(line.service_date), amount(line.charge, said("no charge")));
  if (!line.payer.empty()) text += fmt::format(", {}", line.payer);
  if (line.submission != Submission::original) {
    const auto submission = shown_word(line.submission);
    text += line.replaces.empty() ? fmt::format(", {}", submission)
                                  : say(", {} of {}", submission, line.replaces);
  }
  return text;
}

std::string record_line(const RemittanceLine& line) {
  auto text = say("{}, {}{}: charge {}, paid {}", line.reference,
                  line.claim_ref.empty() ? said("no claim") : line.claim_ref,
                  line.code.empty() ? "" : fmt::format(", {}", line.code),
                  amount_words(line.charge), amount_words(line.paid));
  if (!line.adjustments.empty()) text += fmt::format(", {}", fmt::join(line.adjustments, ", "));
  return text;
}

std::string record_line(const OrderLine& line) {
  auto text = say("{}: {} of {} at {}, ordered {}", line.order_ref, line.quantity, line.item.text,
                  amount(line.unit_cost, said("no price")), date_words(line.ordered_on));
  if (line.received_quantity > 0) {
    text += line.received_on
                ? say(", {} received {}", line.received_quantity, date_words(*line.received_on))
                : say(", {} received", line.received_quantity);
  }
  return text;
}

std::string record_line(const InvoiceLine& line) {
  auto text = say("{}: {} of {} at {}, {}",
                  line.order_ref.empty() ? line.invoice_ref
                                         : say("{} for {}", line.invoice_ref, line.order_ref),
                  line.quantity, line.item.text, amount(line.unit_cost, said("no price")),
                  date_words(line.invoiced_on, said("no day")));
  if (line.freight) text += say(", freight {}", amount_words(*line.freight));
  return text;
}

std::string record_line(const SupplierReturn& sent) {
  return say("Return {} to {}: {} of {}, sent {}, credit due {}, come {}", sent.number,
             sent.supplier.text, sent.quantity, sent.lot.item.text, date_words(sent.sent_on),
             amount(sent.due, said("not known")), amount(sent.credited, said("nothing")));
}

BothSides both_sides(const Clinic& clinic, const billing::BillingFinding& finding) {
  const auto& found = finding.evidence;
  BothSides sides;
  switch (billing::book_of(finding.kind)) {
    case billing::Book::claims:
      sides.ours = {said("Handed out"), {}, said("Nothing that answers to it was handed out.")};
      sides.theirs = {said("Billed"), {}, said("Nothing that answers to it was billed.")};
      break;
    case billing::Book::payments:
      sides.ours = {said("Billed"), {}, said("No claim that answers to it is recorded.")};
      sides.theirs = {said("Answered and paid"), {}, said("No answer is recorded.")};
      add_lines(sides.ours.lines, clinic.claim_lines, found.claim_lines);
      add_lines(sides.theirs.lines, clinic.remittance_lines, found.remittance_lines);
      return sides;
    case billing::Book::suppliers:
      sides.ours = {
          said("Ordered and received"), {}, said("No order that answers to it is recorded.")};
      sides.theirs = {
          said("Invoiced and credited"), {}, said("Nothing of it was invoiced or credited.")};
      add_units(sides.ours.lines, clinic, found.units);
      add_lines(sides.ours.lines, clinic.order_lines, found.order_lines);
      add_lines(sides.theirs.lines, clinic.invoice_lines, found.invoice_lines);
      add_lines(sides.theirs.lines, clinic.supplier_returns, found.supplier_returns);
      return sides;
  }
  add_units(sides.ours.lines, clinic, found.units);
  add_lines(sides.theirs.lines, clinic.claim_lines, found.claim_lines);
  add_lines(sides.theirs.lines, clinic.remittance_lines, found.remittance_lines);
  return sides;
}

}  // namespace sparewell::desk
