#include "store/examples.hpp"

namespace sparewell::store::test {
namespace {

const Date spring = make_date(2026, 3, 1);
const Date autumn = make_date(2026, 10, 1);
const Money ten_euros{1000, {"EUR"}};

}  // namespace

template <>
Supplier bare() {
  return {.name = {"Nordlicht Parts"}};
}
template <>
Supplier full() {
  return {.name = {"Südwind & Söhne"},
          .order_days = {.weekdays = 0b1001, .every_days = 0},
          .freight = Money{850, {"EUR"}},
          .free_freight_from = Money{50000, {"EUR"}},
          .currency = {"EUR"},
          .email = "orders@suedwind.example",
          .account = "47-11"};
}
template <>
Supplier full_but_changed() {
  return {.name = {"Südwind & Söhne"}, .order_days = {.weekdays = 0, .every_days = 14}};
}

template <>
Item bare() {
  return {.code = {"X-1"}};
}
template <>
Item full() {
  return {.code = {"X-2"},
          .description = "liner, 3 mm; \"soft\"",
          .kind = Kind::pin,
          .attachment = Attachment::seal,
          .material = Material::mineral_oil_gel,
          .size_label = "28",
          .size_min_cm = 27.5,
          .size_max_cm = 29.1,
          .size_at_cm = 4,
          .constituents = {"mineral oil", "styrene copolymer", "mineral oil"},
          .billing_code = "Z0001",
          .supplier = {"Nordlicht Parts"},
          .supplier_item = "N-28",
          .unit_cost = ten_euros,
          .currency = {"EUR"},
          .pack_size = 2,
          .min_order = 4,
          .price_breaks = {{10, {900, {"EUR"}}}, {50, {800, {"EUR"}}}},
          .lead_days = 0,
          .shelf_life_days = 730,
          .thread = "M10",
          .gtin = "04012345678901",
          .stocked = false,
          .warranty_days = 183};
}
template <>
Item full_but_changed() {
  return {.code = {"X-2"}, .constituents = {"silicone"}, .price_breaks = {{5, ten_euros}}};
}

template <>
Patient bare() {
  return {.ref = {"P-3"}};
}
template <>
Patient full() {
  return {.ref = {"P-4"},
          .given_name = "Ödön",
          .family_name = "O'Sample",
          .birth_date = make_date(1948, 2, 29),
          .next_visit = autumn,
          .place = "Werkstatt Süd",
          .payer = "Kasse Nordlicht",
          .member_id = "M-0815"};
}
template <>
Patient full_but_changed() {
  return {.ref = {"P-4"}};
}

template <>
Prosthesis bare() {
  return {.patient = {"P-1"}, .delivered_on = spring};
}
template <>
Prosthesis full() {
  return {.patient = {"P-2"},
          .side = Side::right,
          .level = Level::knee_disarticulation,
          .suspension = Suspension::vacuum,
          .stage = Stage::preparatory,
          .delivered_on = spring,
          .ended_on = autumn};
}
template <>
Prosthesis full_but_changed() {
  return {.patient = {"P-2"}, .side = Side::right, .delivered_on = spring};
}

template <>
Usage bare() {
  return {.patient = {"P-1"}, .from_date = spring};
}
template <>
Usage full() {
  return {.patient = {"P-2"},
          .from_date = spring,
          .activity = Activity::k4,
          .kneeling_hours = 0.25,
          .wear_hours = 16,
          .sweating = Sweating::high,
          .impact_sport = false};
}
template <>
Usage full_but_changed() {
  return {.patient = {"P-2"}, .from_date = spring, .impact_sport = true};
}

template <>
Sensitivity bare() {
  return {.patient = {"P-1"}, .substance = "thiurams"};
}
template <>
Sensitivity full() {
  return {.patient = {"P-1"},
          .substance = "thiurams",
          .reaction = "redness",
          .established_by = "patch test",
          .noted_on = spring};
}
template <>
Sensitivity full_but_changed() {
  return {.patient = {"P-1"}, .substance = "thiurams", .reaction = "none", .noted_on = spring};
}

template <>
SensitivityDecision bare() {
  return {.patient = {"P-1"},
          .item = {"L-1"},
          .substance = "thiurams",
          .verdict = Verdict::not_declared,
          .decided_on = spring,
          .decided_by = "B. Fern",
          .reason = "tried"};
}
template <>
SensitivityDecision full() {
  auto made = bare<SensitivityDecision>();
  made.verdict = Verdict::conflict;
  made.withdrawn_on = spring + days{4};
  made.item = {"L-2"};
  return made;
}
template <>
SensitivityDecision full_but_changed() {
  auto made = full<SensitivityDecision>();
  made.verdict = Verdict::possible_conflict;
  made.decided_by = "C. Reed";
  made.reason = "asked again";
  made.withdrawn_on.reset();
  return made;
}

template <>
SubstanceRow bare() {
  return {.substance = "oil of moss",
          .relation = SubstanceRelation::is_a,
          .other = "plant oils",
          .source = "maker's letter"};
}
template <>
SubstanceRow full() {
  return {.substance = "oil of moss",
          .relation = SubstanceRelation::may_contain,
          .other = "colophony",
          .source = "maker's letter",
          .withdrawn_on = spring};
}
template <>
SubstanceRow full_but_changed() {
  auto made = full<SubstanceRow>();
  made.source = "asked again";
  made.withdrawn_on.reset();
  return made;
}

template <>
Measurement bare() {
  return {.patient = {"P-1"}, .measured_on = spring};
}
template <>
Measurement full() {
  return {.patient = {"P-1"},
          .side = Side::right,
          .measured_on = spring,
          .at_cm = 4.1,
          .circumference_cm = 28.35};
}
template <>
Measurement full_but_changed() {
  auto measurement = full<Measurement>();
  measurement.circumference_cm = 27.9;
  return measurement;
}

template <>
Reaction bare() {
  return {.patient = {"P-1"}, .began_on = spring, .signs = {"rash"}};
}
template <>
Reaction full() {
  return {.patient = {"P-2"},
          .side = Side::right,
          .began_on = spring,
          .ended_on = autumn,
          .signs = {"itching", "dry skin"},
          .note = "below the trim line"};
}
template <>
Reaction full_but_changed() {
  return {.patient = {"P-2"}, .side = Side::right, .began_on = spring, .signs = {"rash"}};
}

template <>
Unit bare() {
  return {.patient = {"P-1"}, .item = {"L-1"}, .issued_on = spring};
}
template <>
Unit full() {
  return {.patient = {"P-1"},
          .side = Side::right,
          .item = {"L-2"},
          .lot = "A7",
          .serial = "0099",
          .issued_on = spring,
          .ended_on = autumn,
          .end_reason = EndReason::lost_grip,
          .share = 0.5,
          .copy = 3};
}
template <>
Unit full_but_changed() {
  auto unit = full<Unit>();
  unit.ended_on.reset();
  unit.end_reason.reset();
  unit.share = 0;
  return unit;
}

template <>
OrderLine bare() {
  return {.supplier = {"Nordlicht Parts"}, .item = {"L-1"}, .ordered_on = spring};
}
template <>
OrderLine full() {
  return {.supplier = {"Nordlicht Parts"},
          .order_ref = "SW-2026-0100",
          .item = {"L-2"},
          .ordered_on = spring,
          .quantity = 12,
          .unit_cost = ten_euros,
          .received_on = autumn,
          .received_quantity = 7,
          .state = OrderState::cancelled,
          .copy = 2};
}
template <>
OrderLine full_but_changed() {
  return {.supplier = {"Nordlicht Parts"},
          .order_ref = "SW-2026-0100",
          .item = {"L-2"},
          .ordered_on = autumn,
          .state = OrderState::draft,
          .copy = 2};
}

template <>
ClaimLine bare() {
  return {.patient = {"P-1"}, .service_date = spring};
}
template <>
ClaimLine full() {
  return {.claim_ref = "C-1",
          .patient = {"P-2"},
          .side = Side::left,
          .service_date = spring,
          .code = "Z0001",
          .modifiers = {"LT", "K3"},
          .quantity = 2,
          .charge = Money{-12345, {"JPY"}},
          .copy = 2,
          .payer = "Kasse Nordlicht",
          .submission = Submission::replacement,
          .replaces = "C-0",
          .line_control = "17"};
}
template <>
ClaimLine full_but_changed() {
  auto line = full<ClaimLine>();
  line.quantity = 1;
  line.charge.reset();
  line.payer = "";
  line.submission = Submission::reversal;
  line.replaces = "";
  line.line_control = "18";
  return line;
}

template <>
InvoiceLine bare() {
  return {.supplier = {"Nordlicht Parts"}, .item = {"L-1"}};
}
template <>
InvoiceLine full() {
  return {.supplier = {"Nordlicht Parts"},
          .invoice_ref = "I-1",
          .order_ref = "SW-2026-0100",
          .item = {"L-2"},
          .quantity = 7,
          .unit_cost = ten_euros,
          .invoiced_on = autumn,
          .copy = 2,
          .freight = ten_euros};
}
template <>
InvoiceLine full_but_changed() {
  auto line = full<InvoiceLine>();
  line.quantity = 0;
  line.unit_cost.reset();
  line.invoiced_on.reset();
  line.freight.reset();
  return line;
}

template <>
Reservation bare() {
  return {.patient = {"P-1"}, .item = {"L-1"}};
}
template <>
Reservation full() {
  return {.patient = {"P-1"},
          .item = {"L-1"},
          .place = "main store",
          .quantity = 2,
          .needed_on = autumn};
}
template <>
Reservation full_but_changed() {
  auto reservation = full<Reservation>();
  reservation.quantity = 1;
  return reservation;
}

template <>
Place bare() {
  return {.name = "branch"};
}
template <>
Place full() {
  return {.name = "van", .sort = PlaceSort::in_transit, .leads_to = "branch"};
}
template <>
Place full_but_changed() {
  return {.name = "van", .sort = PlaceSort::at_supplier, .leads_to = "Nordlicht Parts"};
}

template <>
Loan bare() {
  return {.number = 1,
          .patient = {"P-1"},
          .lot = {.item = {"L-1"}},
          .quantity = 1,
          .lent_on = spring,
          .due_on = spring};
}
template <>
Loan full() {
  return {.number = 2,
          .patient = {"P-2"},
          .side = Side::right,
          .lot = {.item = {"L-2"}, .lot = "A", .use_by = autumn},
          .quantity = 9,
          .place = "main store",
          .lent_on = spring,
          .due_on = autumn,
          .came_back = 1,
          .kept = 2,
          .lost = 3,
          .note = "tries a larger size"};
}
template <>
Loan full_but_changed() {
  auto loan = full<Loan>();
  loan.due_on = spring;
  loan.lot.use_by.reset();
  loan.came_back = 4;
  return loan;
}

template <>
SupplierReturn bare() {
  return {.number = 1,
          .supplier = {"Nordlicht Parts"},
          .reference = "R-1",
          .lot = {.item = {"L-1"}},
          .quantity = 1,
          .sent_on = spring};
}
template <>
SupplierReturn full() {
  return {.number = 2,
          .supplier = {"Nordlicht Parts"},
          .reference = "R-1",
          .lot = {.item = {"L-2"}, .lot = "A", .use_by = autumn},
          .quantity = 3,
          .reason = "seam opens",
          .sent_on = spring,
          .due = Money{3000, {"EUR"}},
          .credited = ten_euros,
          .closed_on = autumn};
}
template <>
SupplierReturn full_but_changed() {
  auto sent = full<SupplierReturn>();
  sent.credited.reset();
  sent.closed_on.reset();
  return sent;
}

/// Of bare<Unit>() and full<Unit>(), which must be stored before.
template <>
Handover bare() {
  return handover_of(bare<Unit>());
}
template <>
Handover full() {
  auto handover = handover_of(full<Unit>());
  handover.overridden = "The part has expired.";
  handover.override_by = "A. Sample";
  handover.override_because = "on trial in the clinic";
  handover.booked_place = "main store";
  handover.booked_on = spring;
  handover.printed_on = spring;
  handover.signed_on = autumn;
  return handover;
}
template <>
Handover full_but_changed() {
  return handover_of(full<Unit>());
}

template <>
OrderHeader bare() {
  return {.supplier = {"Nordlicht Parts"}, .order_ref = "SW-2026-0101", .created_on = spring};
}
template <>
OrderHeader full() {
  return {.supplier = {"Nordlicht Parts"},
          .order_ref = "SW-2026-0100",
          .revision = 3,
          .created_on = spring,
          .placed_on = spring,
          .expected_by = autumn,
          .approved_by = "A person",
          .approved_on = spring,
          .approved_sum = ten_euros,
          .approved_unpriced = 2,
          .cancelled_on = autumn,
          .cancelled_why = "no longer made"};
}
template <>
OrderHeader full_but_changed() {
  return {.supplier = {"Nordlicht Parts"}, .order_ref = "SW-2026-0100", .created_on = autumn};
}

template <>
OrderPromise bare() {
  return {.supplier = {"Nordlicht Parts"}, .item = {"L-1"}};
}
template <>
OrderPromise full() {
  return {.supplier = {"Nordlicht Parts"},
          .order_ref = "SW-2026-0100",
          .item = {"L-2"},
          .copy = 2,
          .promised_on = autumn,
          .on_back_order = true};
}
template <>
OrderPromise full_but_changed() {
  auto promise = full<OrderPromise>();
  promise.promised_on.reset();
  promise.on_back_order = false;
  return promise;
}

template <>
OrderPiece bare() {
  return {.supplier = {"Nordlicht Parts"}, .item = {"L-1"}, .patient = {"P-1"}};
}
template <>
OrderPiece full() {
  return {.supplier = {"Nordlicht Parts"},
          .order_ref = "SW-2026-0100",
          .item = {"L-2"},
          .copy = 2,
          .position = 3,
          .patient = {"P-2"},
          .side = Side::right,
          .needed_on = spring,
          .promised = true,
          .put_away_on = autumn};
}
template <>
OrderPiece full_but_changed() {
  return {.supplier = {"Nordlicht Parts"},
          .order_ref = "SW-2026-0100",
          .item = {"L-2"},
          .copy = 2,
          .position = 3,
          .patient = {"P-1"}};
}

template <>
OrderRevision bare() {
  return {.supplier = {"Nordlicht Parts"}, .made_on = spring, .ordered_on = spring};
}
template <>
OrderRevision full() {
  return {.supplier = {"Nordlicht Parts"},
          .order_ref = "SW-2026-0100",
          .revision = 2,
          .made_on = autumn,
          .made_by = "anna",
          .why = "fewer are needed",
          .ordered_on = spring,
          .expected_by = autumn,
          .account = "K-1",
          .clinic_name = "Invented Clinic",
          .ship_to = "Long Lane 1\nNowhere"};
}
template <>
OrderRevision full_but_changed() {
  auto revision = full<OrderRevision>();
  revision.why = "more are needed";
  return revision;
}

template <>
OrderRevisionLine bare() {
  return {.supplier = {"Nordlicht Parts"}, .item = {"L-1"}};
}
template <>
OrderRevisionLine full() {
  return {.supplier = {"Nordlicht Parts"},
          .order_ref = "SW-2026-0100",
          .revision = 2,
          .position = 4,
          .item = {"L-2"},
          .supplier_item = "N 2",
          .description = "Liner",
          .size_label = "22",
          .quantity = 3,
          .unit_cost = ten_euros,
          .promised_on = autumn,
          .for_patients = {"P-1 left", "P-2"}};
}
template <>
OrderRevisionLine full_but_changed() {
  auto line = full<OrderRevisionLine>();
  line.quantity = 4;
  return line;
}

void add_referred(UnitOfWork& work) {
  work.put(bare<Supplier>());
  for (const char* code : {"L-1", "L-2"}) {
    auto item = bare<Item>();
    item.code = {code};
    work.put(item);
  }
  for (const char* ref : {"P-1", "P-2"}) work.put(Patient{.ref = {ref}});
}

}  // namespace sparewell::store::test
