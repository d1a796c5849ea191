#include "store/examples.hpp"

namespace sparewell::store::test {
namespace {

const Date spring = make_date(2026, 3, 1);
const Date autumn = make_date(2026, 10, 1);
const Money ten_euros{1000, {"EUR"}};

}  // namespace

template <>
BillingCode bare() {
  return {.list = "TEST", .code = "Z0001"};
}
template <>
BillingCode full() {
  return {.list = "TEST",
          .code = "Z0001",
          .description = "Liner; \"soft\"",
          .unit = "each",
          .valid_from = spring,
          .valid_to = autumn,
          .source = "invented"};
}
template <>
BillingCode full_but_changed() {
  return {.list = "TEST", .code = "Z0001", .valid_from = spring};
}

template <>
PayerRule bare() {
  return {};
}
template <>
PayerRule full() {
  return {.payer = "Kasse Nordlicht",
          .code = "Z0001",
          .rule = PayerRuleKind::replacement_paper,
          .number = 2,
          .days = 365,
          .amount = ten_euros,
          .words = "order",
          .valid_from = spring,
          .valid_to = autumn,
          .source = "contract"};
}
template <>
PayerRule full_but_changed() {
  return {.payer = "Kasse Nordlicht",
          .code = "Z0001",
          .rule = PayerRuleKind::replacement_paper,
          .words = "order",
          .valid_from = spring};
}

template <>
Remittance bare() {
  return {.reference = "T-0", .paid_on = spring};
}
template <>
Remittance full() {
  return {.payer = "Kasse Nordlicht",
          .reference = "T-1",
          .paid_on = spring,
          .total = ten_euros,
          .source = "paid.835"};
}
template <>
Remittance full_but_changed() {
  return {.payer = "Kasse Nordlicht", .reference = "T-1", .paid_on = autumn};
}

template <>
RemittanceLine bare() {
  return {.reference = "T-0"};
}
template <>
RemittanceLine full() {
  return {.payer = "Kasse Nordlicht",
          .reference = "T-1",
          .position = 2,
          .entry = RemittanceEntry::claim,
          .claim_ref = "C-1",
          .payer_claim = "K-77",
          .status = "22",
          .patient = {"P-2"},
          .side = Side::right,
          .service_date = spring,
          .code = "Z0001",
          .modifiers = {"RT", "RA"},
          .quantity = -1,
          .charge = Money{-2000, {"EUR"}},
          .paid = Money{-1000, {"EUR"}},
          .adjustments = {"CO:45:-10.00", "PR:2:0.00"},
          .line_control = "17"};
}
template <>
RemittanceLine full_but_changed() {
  return {.payer = "Kasse Nordlicht", .reference = "T-1", .position = 2};
}

template <>
PartPaper bare() {
  return {.patient = {"P-1"},
          .item = {"L-1"},
          .issued_on = spring,
          .paper = "order",
          .dated_on = spring};
}
template <>
PartPaper full() {
  return {.patient = {"P-1"},
          .side = Side::right,
          .item = {"L-2"},
          .lot = "A7",
          .serial = "0099",
          .issued_on = spring,
          .copy = 3,
          .paper = "reason",
          .dated_on = autumn,
          .words = "the limb has changed",
          .noted_by = "Anna"};
}
template <>
PartPaper full_but_changed() {
  auto paper = full<PartPaper>();
  paper.words = "torn";
  paper.noted_by = "";
  return paper;
}

template <>
BillingAnswer bare() {
  return {.finding = "f", .reason = "r", .answered_by = "Anna", .answered_on = spring};
}
template <>
BillingAnswer full() {
  return {.finding = "f",
          .number = 2,
          .answer = Answer::written_off,
          .reason = "too old",
          .answered_by = "Bea",
          .answered_on = autumn,
          .quantity = 3,
          .money = ten_euros,
          .ask_again_on = autumn};
}
template <>
BillingAnswer full_but_changed() {
  auto answer = bare<BillingAnswer>();
  answer.number = 2;
  return answer;
}

template <>
MonthClose bare() {
  return {.month = spring, .closed_on = autumn, .closed_by = "Anna"};
}
template <>
MonthClose full() {
  return {.month = spring,
          .number = 2,
          .closed_on = autumn,
          .closed_by = "Bea",
          .note = "an invoice came late"};
}
template <>
MonthClose full_but_changed() {
  return {.month = spring, .number = 2, .closed_on = spring, .closed_by = "Anna"};
}

template <>
ClosedEntry bare() {
  return {.month = spring, .key = "k"};
}
template <>
ClosedEntry full() {
  return {.month = spring,
          .number = 2,
          .entry = BookEntry::payment,
          .key = "k",
          .quantity = -1,
          .amount = ten_euros};
}
template <>
ClosedEntry full_but_changed() {
  auto entry = full<ClosedEntry>();
  entry.quantity = 1;
  entry.amount.reset();
  return entry;
}

template <>
ColumnMapping bare() {
  return {.name = "A", .target = "claims", .columns = {}, .date_pattern = ""};
}
template <>
ColumnMapping full() {
  return {.name = "B",
          .target = "remittance",
          .columns = {"code=Ziffer", "charge=Betrag in EUR"},
          .date_pattern = "DD.MM.YYYY",
          .decimal_sign = ","};
}
template <>
ColumnMapping full_but_changed() {
  return {.name = "B", .target = "claims", .columns = {"code=Ziffer"}, .date_pattern = ""};
}

}  // namespace sparewell::store::test
