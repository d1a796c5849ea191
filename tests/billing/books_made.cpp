#include "billing/books_made.hpp"

#include <algorithm>
#include <map>

#include <fmt/format.h>

namespace sparewell::test {
namespace {

struct Sort {
  const char* item;
  const char* code;
  Kind kind;
};
constexpr Sort sorts[] = {{"LN", "L5673", Kind::liner},  {"CN", "L5679", Kind::liner},
                          {"SL", "L5685", Kind::sleeve}, {"SK", "L8420", Kind::sock},
                          {"SK2", "L8420", Kind::sock},  {"SH", "L8400", Kind::sock},
                          {"LK", "L5671", Kind::lock}};

const char* code_of(const std::string& item) {
  return std::ranges::find_if(sorts, [&](const Sort& each) { return each.item == item; })->code;
}

Slot slot_of(Dice& dice, Date day, Side side, const std::string& item) {
  Slot slot;
  slot.day = day;
  slot.side = side;
  slot.item = item;
  slot.code = code_of(item);
  slot.quantity = item == "SK" ? (dice.chance(50) ? 12 : dice.whole(4, 8)) : 1;
  return slot;
}

PatientMade make_patient(Dice& dice, int number, const BookShape& shape) {
  PatientMade made;
  made.ref = {fmt::format("P-{:05}", number)};
  made.payer = number % 3 == 0 ? "Payer A" : "Payer B";
  if (dice.chance(35)) {
    made.sides = {Side::left, Side::right};
  } else {
    made.sides = {dice.chance(50) ? Side::left : Side::right};
  }
  // The last visit lies within the days from which on papers are kept here.
  Date day = books_today - days{dice.whole(35, 60)};
  for (int visit = 0; visit < shape.visits; ++visit) {
    std::vector<Slot> slots;
    for (const Side side : made.sides) {
      slots.push_back(slot_of(dice, day, side, "LN"));
      if (dice.chance(50)) slots.push_back(slot_of(dice, day, side, "SL"));
      if (dice.chance(50)) {
        slots.push_back(slot_of(dice, day, side, "SK"));
        if (shape.single_socks) slots.back().quantity = 1;
      }
    }
    made.visits.insert(made.visits.begin(), std::move(slots));
    day -= days{dice.whole(120, 150)};
  }
  return made;
}

/// What was handed out before ends when its successor comes.
void end_predecessors(PatientMade& patient) {
  std::map<std::pair<Side, std::string>, std::vector<Slot*>> in_use;
  for (auto& visit : patient.visits) {
    for (auto& slot : visit) {
      auto& before = in_use[{slot.side, slot.item}];
      for (Slot* each : before) {
        if (each->ended_on || each->day >= slot.day) continue;
        each->ended_on = slot.day;
        each->end_reason = EndReason::hole;
      }
      before.push_back(&slot);
    }
  }
}

void bill_twice_split(BooksMade& books, ClaimLine line, Dice& dice) {
  ClaimLine rest = line;
  line.quantity = dice.whole(1, line.quantity - 1);
  rest.quantity -= line.quantity;
  const std::int64_t each = price_of(line.code);
  line.charge = cents(each * line.quantity);
  rest.charge = cents(each * rest.quantity);
  rest.copy = 2;
  books.clinic.claim_lines.push_back(line);
  books.clinic.claim_lines.push_back(rest);
}

void reverse_and_bill_again(BooksMade& books, const ClaimLine& line, Dice& dice) {
  ClaimLine wrong = line;
  wrong.charge = cents(line.charge->minor + dice.whole(0, 500));
  ClaimLine back = wrong;
  back.submission = Submission::reversal;
  if (dice.chance(50)) back.charge = cents(-wrong.charge->minor);
  if (dice.chance(50)) {
    back.claim_ref += "V";
    back.replaces = line.claim_ref;
  } else {
    back.copy = 2;
  }
  ClaimLine again = line;
  again.claim_ref += "R";
  for (const auto& each : {wrong, back, again}) books.clinic.claim_lines.push_back(each);
}

void bill(BooksMade& books, const PatientMade& patient, std::size_t visit, Dice& dice) {
  const auto& slots = patient.visits[visit];
  const bool clean = std::ranges::none_of(slots, &Slot::planted);
  const bool replaced = clean && dice.chance(8);
  for (const auto& slot : slots) {
    if (!slot.billed) continue;
    ClaimLine line = line_of(patient, visit, slot);
    if (slot.planted) {
      books.clinic.claim_lines.push_back(line);
      continue;
    }
    if (replaced) {
      ClaimLine wrong = line;
      wrong.charge = cents(line.charge->minor + 100);
      books.clinic.claim_lines.push_back(wrong);
      line.claim_ref += "N";
      line.submission = Submission::replacement;
      line.replaces = wrong.claim_ref;
      books.clinic.claim_lines.push_back(line);
      continue;
    }
    if (dice.chance(12)) line.service_date += days{dice.whole(-6, 10)};
    if (slot.quantity > 1 && dice.chance(15)) {
      bill_twice_split(books, line, dice);
    } else if (dice.chance(6)) {
      reverse_and_bill_again(books, line, dice);
    } else {
      books.clinic.claim_lines.push_back(line);
    }
  }
}

void hand_out(BooksMade& books, const PatientMade& patient) {
  auto& clinic = books.clinic;
  int number = 0;
  for (const auto& visit : patient.visits) {
    for (const auto& slot : visit) {
      for (int copy = 1; copy <= slot.quantity; ++copy) {
        Unit unit;
        unit.patient = patient.ref;
        unit.side = slot.side;
        // Some of the socks are of a second item under the same code.
        unit.item = {slot.item == "SK" && slot.quantity == 12 && copy > 8 ? "SK2" : slot.item};
        unit.lot = fmt::format("L{}", ++number);
        unit.issued_on = slot.day;
        unit.ended_on = slot.ended_on;
        unit.end_reason = slot.end_reason;
        if (clinic.settings.papers_begin <= unit.issued_on) {
          for (const char* paper : {"order", "condition"}) {
            if (slot.no_paper == paper) continue;
            clinic.part_papers.push_back({unit.patient, unit.side, unit.item, unit.lot, "",
                                          unit.issued_on, 1, paper, unit.issued_on, "", ""});
          }
          auto handover = handover_of(unit);
          if (!slot.unsigned_) handover.signed_on = unit.issued_on;
          clinic.handovers.push_back(handover);
        }
        if (slot.reason) {
          clinic.part_papers.push_back({unit.patient, unit.side, unit.item, unit.lot, "",
                                        unit.issued_on, 1, "reason", unit.issued_on, "", ""});
        }
        clinic.units.push_back(std::move(unit));
      }
    }
  }
}

/// A part that came back within days: not billed, or billed and taken back.
void add_returned(BooksMade& books, PatientMade& patient, Dice& dice) {
  auto& visit = patient.visits.front();
  Slot slot = visit.front();
  slot.item = "SL";
  slot.code = code_of(slot.item);
  slot.planted = true;
  slot.billed = false;
  slot.quantity = 1;
  slot.day -= days{60};
  slot.ended_on = slot.day + days{dice.whole(1, 14)};
  slot.end_reason = EndReason::returned;
  if (dice.chance(50)) {
    ClaimLine line = line_of(patient, 90, slot);
    ClaimLine back = line;
    back.submission = Submission::reversal;
    back.copy = 2;
    books.clinic.claim_lines.push_back(line);
    books.clinic.claim_lines.push_back(back);
  }
  patient.visits.insert(patient.visits.begin(), std::vector<Slot>{slot});
}

}  // namespace

std::int64_t price_of(const std::string& code) {
  static const std::map<std::string, std::int64_t> prices{
      {"L5673", 70011}, {"L5679", 64007}, {"L5685", 11003}, {"L8420", 2101},
      {"L8400", 1507},  {"L5671", 50001}, {"L7600", 8900},  {"L5683", 80003}};
  return prices.at(code);
}

Money cents(std::int64_t minor) {
  return {minor, euro};
}

std::string modifier_of(Side side) {
  return side == Side::left ? "LT" : "RT";
}

ClaimLine line_of(const PatientMade& patient, std::size_t visit, const Slot& slot) {
  ClaimLine line;
  line.claim_ref = fmt::format("C-{}-{}", patient.ref.text, visit);
  line.patient = patient.ref;
  line.side = slot.side;
  line.service_date = slot.day;
  line.code = slot.code;
  line.modifiers = {modifier_of(slot.side)};
  line.quantity = slot.quantity;
  line.charge = cents(price_of(slot.code) * slot.quantity);
  line.payer = patient.payer;
  return line;
}

BooksMade make_books(std::uint64_t seed, const BookShape& shape) {
  Dice dice{seed};
  BooksMade books;
  books.clinic.settings.currency = euro;
  books.clinic.settings.billing_begins = books_today - days{1000};
  books.clinic.settings.papers_begin = books_today - days{65};
  for (const auto& [item, code, kind] : sorts) {
    Item made;
    made.code = {item};
    made.kind = kind;
    made.billing_code = code;
    books.clinic.items.push_back(made);
  }
  for (int number = 0; number < shape.patients; ++number) {
    PatientMade patient = make_patient(dice, number, shape);
    if (shape.planted) plant(books, patient, dice, number % sorts_of_errors);
    if (dice.chance(10)) add_returned(books, patient, dice);
    Patient record;
    record.ref = patient.ref;
    record.payer = patient.payer;
    books.clinic.patients.push_back(record);
    for (const Side side : patient.sides) {
      Prosthesis prosthesis;
      prosthesis.patient = patient.ref;
      prosthesis.side = side;
      prosthesis.delivered_on = books_today - days{900};
      books.clinic.prostheses.push_back(prosthesis);
    }
    end_predecessors(patient);
    hand_out(books, patient);
    for (std::size_t visit = 0; visit < patient.visits.size(); ++visit) {
      bill(books, patient, visit, dice);
    }
  }
  std::ranges::sort(books.planted);
  return books;
}

billing::CodeTable test_codes() {
  std::vector<BillingCode> rows;
  for (const char* code :
       {"L5671", "L5673", "L5679", "L5683", "L5685", "L7600", "L8400", "L8420"}) {
    rows.push_back({"HCPCS", code, "invented for tests", "each", {}, {}, "invented"});
  }
  rows.push_back({"HCPCS", "L7520", "work", "15 minutes", {}, {}, "invented"});
  rows.push_back({"HCPCS", "L5660", "ended", "each", {}, make_date(2020, 12, 31), "invented"});
  return billing::CodeTable{rows};
}

billing::RuleBook test_rules() {
  std::vector<PayerRule> rows;
  const auto add = [&](std::string payer, std::string code, PayerRuleKind kind,
                       std::optional<int> number, std::optional<int> days, std::string said) {
    PayerRule rule;
    rule.payer = std::move(payer);
    rule.code = std::move(code);
    rule.rule = kind;
    rule.number = number;
    rule.days = days;
    rule.words = std::move(said);
    rule.source = "invented";
    if (kind == PayerRuleKind::fee) rule.amount = cents(price_of(rule.code));
    rows.push_back(std::move(rule));
  };
  for (const char* code : {"L5673", "L5679", "L5683"}) {
    add("", code, PayerRuleKind::at_once, 2, {}, "");
    add("", code, PayerRuleKind::side_lines, {}, {}, "");
  }
  add("", "L5683", PayerRuleKind::initial_only, 1, {}, "L5673 or L5679");
  add("Payer A", "L8400", PayerRuleKind::in_period, 12, 365, "");
  add("Payer B", "L8400", PayerRuleKind::in_period, 12, 365, "");
  add("", "L5671", PayerRuleKind::fee, {}, {}, "");
  add("", "", PayerRuleKind::early, {}, 90, "");
  add("", "", PayerRuleKind::paper, {}, {}, "order");
  add("", "", PayerRuleKind::replacement_paper, {}, {}, "condition");
  add("", "", PayerRuleKind::replacement_paper, {}, {}, "cost share");
  return billing::RuleBook{rows};
}

}  // namespace sparewell::test
