// The errors that are put into the books that are made.
#include <fmt/format.h>

#include "billing/books_made.hpp"

namespace sparewell::test {
namespace {

using billing::FindingKind;

/// One patient's books while an error is put into them.
class Planter {
 public:
  Planter(BooksMade& books, PatientMade& patient, Dice& dice)
      : books_{books}, patient_{patient}, dice_{dice}, middle_{patient.visits.size() / 2} {}

  void expect(FindingKind kind, const std::string& code, int quantity,
              std::optional<std::int64_t> money) {
    books_.planted.push_back({kind, patient_.ref, code, quantity, money});
  }

  /// The only slot of a visit: pieces of one item, as they are to be billed.
  Slot& only(std::size_t visit, const std::string& item, const std::string& code, int quantity) {
    auto& slots = patient_.visits[visit];
    Slot slot;
    slot.day = slots.front().day;
    slot.side = patient_.sides.front();
    slot.item = item;
    slot.code = code;
    slot.quantity = quantity;
    slot.planted = true;
    slots = {slot};
    return slots.front();
  }
  Slot& liner() { return only(middle_, "LN", "L5673", 1); }
  Slot& socks(int quantity) { return only(middle_, "SK", "L8420", quantity); }

  /// Takes the ordinary line off and gives it to be changed.
  ClaimLine own_line(Slot& slot) {
    slot.billed = false;
    ClaimLine line = line_of(patient_, 50, slot);
    return line;
  }
  void bill(const ClaimLine& line) { books_.clinic.claim_lines.push_back(line); }

  void of_amount(int sort);
  void of_line(int sort);
  void of_payer(int sort);

 private:
  void other_patient();
  void replace_early(bool with_reason);

  BooksMade& books_;
  PatientMade& patient_;
  Dice& dice_;
  std::size_t middle_;
};

/// Not billed, not issued, or in another quantity.
void Planter::of_amount(int sort) {
  if (sort == 0) {
    liner().billed = false;
    expect(FindingKind::issued_not_billed, "L5673", 1, price_of("L5673"));
  } else if (sort == 1) {
    socks(6).billed = false;
    expect(FindingKind::issued_not_billed, "L8420", 6, 6 * price_of("L8420"));
  } else if (sort == 2) {
    Slot slot = liner();
    slot.code = "L7600";
    slot.day += days{20};
    bill(own_line(slot));
    expect(FindingKind::billed_not_issued, "L7600", 1, -price_of("L7600"));
  } else if (sort == 3) {
    auto line = own_line(socks(4));
    line.quantity = 8;
    line.charge = cents(8 * price_of("L8420"));
    bill(line);
    expect(FindingKind::wrong_quantity, "L8420", 4, -4 * price_of("L8420"));
  } else if (sort == 4) {
    auto line = own_line(socks(6));
    line.quantity = 4;
    line.charge = cents(4 * price_of("L8420"));
    bill(line);
    expect(FindingKind::wrong_quantity, "L8420", 2, 2 * price_of("L8420"));
  } else if (sort == 5) {
    auto line = own_line(liner());
    bill(line);
    line.copy = 2;
    bill(line);
    expect(FindingKind::duplicate, "L5673", 1, -price_of("L5673"));
  } else if (sort == 6) {
    auto line = own_line(socks(6));
    bill(line);
    line.claim_ref += "B";
    line.service_date += days{5};
    bill(line);
    expect(FindingKind::duplicate, "L8420", 6, -6 * price_of("L8420"));
  } else if (sort == 7) {
    other_patient();
  } else if (sort == 8) {
    Slot& slot = only(middle_, "SL", "L5685", 1);
    slot.ended_on = slot.day + days{5};
    slot.end_reason = EndReason::returned;
    expect(FindingKind::billed_not_issued, "L5685", 1, -price_of("L5685"));
  }
}

/// A lock of this patient is billed to the one before.
void Planter::other_patient() {
  auto line = own_line(only(middle_, "LK", "L5671", 1));
  line.patient = books_.clinic.patients.back().ref;
  line.payer = books_.clinic.patients.back().payer;
  bill(line);
  expect(FindingKind::issued_not_billed, "L5671", 1, price_of("L5671"));
  books_.planted.push_back(
      {FindingKind::billed_not_issued, line.patient, "L5671", 1, -price_of("L5671")});
}

/// Something on the line is wrong.
void Planter::of_line(int sort) {
  ClaimLine line = own_line(liner());
  const std::int64_t price = price_of("L5673");
  if (sort == 9) {
    line.side = line.side == Side::left ? Side::right : Side::left;
    line.modifiers = {modifier_of(*line.side)};
    expect(FindingKind::wrong_side, "L5673", 1, 0);
  } else if (sort == 10) {
    line.code = "L5679";
    expect(FindingKind::wrong_code, "L5673", 1, std::nullopt);
  } else if (sort == 11) {
    line.service_date += days{dice_.whole(15, 45)};
    expect(FindingKind::wrong_date, "L5673", 1, 0);
  } else if (sort == 12) {
    line.service_date -= days{dice_.whole(15, 45)};
    expect(FindingKind::wrong_date, "L5673", 1, 0);
  } else if (sort == 13) {
    line.charge.reset();
    expect(FindingKind::no_charge, "L5673", 1, price);
  } else if (sort == 14) {
    line.code = fmt::format("Q-{}", line.patient.text);
    expect(FindingKind::code_not_valid, line.code, 1, -price);
  } else if (sort == 15) {
    line.code = "L5660";
    expect(FindingKind::code_not_valid, line.code, 1, -price);
  } else if (sort == 16) {
    ClaimLine back = line;
    back.claim_ref += "Z";
    back.service_date += days{40};
    back.charge = cents(-price);
    bill(back);
    expect(FindingKind::reversal_without_claim, "L5673", 1, price);
  } else if (sort == 17) {
    bill(line);
    ClaimLine back = line;
    back.copy = 2;
    back.charge = cents(-price + 10011);
    bill(back);
    line.claim_ref += "R";
    expect(FindingKind::reversal_without_claim, "L5673", 0, -10011);
  } else if (sort == 18) {
    line.side.reset();
    line.modifiers.clear();
    expect(FindingKind::wrong_side, "L5673", 1, 0);
  }
  bill(line);
}

void Planter::replace_early(bool with_reason) {
  Slot& slot = liner();
  slot.ended_on = slot.day + days{dice_.whole(30, 40)};
  slot.end_reason = EndReason::other;
  Slot next = slot;
  next.day = *slot.ended_on + days{dice_.whole(0, 5)};
  next.ended_on.reset();
  next.end_reason.reset();
  next.reason = with_reason;
  patient_.visits.insert(patient_.visits.begin() + static_cast<std::ptrdiff_t>(middle_) + 1,
                         std::vector<Slot>{next});
  if (!with_reason) expect(FindingKind::replaced_early, "L5673", 1, -price_of("L5673"));
}

/// What payers require is not kept.
void Planter::of_payer(int sort) {
  const std::size_t last = patient_.visits.size() - 1;
  if (sort == 19) {
    only(middle_, "LN", "L5673", 3);
    expect(FindingKind::over_limit, "L5673", 1, -price_of("L5673"));
  } else if (sort == 20) {
    only(middle_, "SH", "L8400", 8);
    only(middle_ + 1, "SH", "L8400", 6);
    expect(FindingKind::over_limit, "L8400", 2, -2 * price_of("L8400"));
  } else if (sort == 21) {
    for (const std::size_t visit : {middle_, middle_ + 1}) {
      Slot& slot = only(visit, "LN", "L5673", 1);
      auto line = own_line(slot);
      line.claim_ref += std::to_string(visit);
      line.code = "L5683";
      line.charge = cents(price_of(line.code));
      bill(line);
    }
    expect(FindingKind::over_limit, "L5683", 1, std::nullopt);
  } else if (sort == 22) {
    replace_early(false);
  } else if (sort == 23) {
    replace_early(true);
  } else if (sort == 24) {
    only(last, "LN", "L5673", 1).no_paper = dice_.chance(50) ? "order" : "condition";
    expect(FindingKind::paper_missing, "L5673", 1, -price_of("L5673"));
  } else {
    only(last, "LN", "L5673", 1).unsigned_ = true;
    expect(FindingKind::no_proof_of_delivery, "", 1, -price_of("L5673"));
  }
}

}  // namespace

void plant(BooksMade& books, PatientMade& patient, Dice& dice, int sort) {
  Planter planter{books, patient, dice};
  if (sort <= 8) {
    planter.of_amount(sort);
  } else if (sort <= 18) {
    planter.of_line(sort);
  } else {
    planter.of_payer(sort);
  }
}

}  // namespace sparewell::test
