#include "desk/order_reasons.hpp"

#include <doctest/doctest.h>

namespace order_reasons_test {

using namespace sparewell;
using namespace sparewell::desk;
using supply::ExpectedNeed;
using supply::ProposalLine;

namespace {

ExpectedNeed need(const std::string& patient, Side side, double chance, Date early) {
  ExpectedNeed made;
  made.patient = {patient};
  made.side = side;
  made.chance = chance;
  made.early = early;
  return made;
}

ProposalLine stocked() {
  ProposalLine line;
  line.supplier = {"Example Supplies"};
  line.item = {"L-28"};
  line.quantity = 2;
  line.unit_cost = Money{41250, Currency{"EUR"}};
  line.on_hand = 2;
  line.target = 4;
  line.order_by = make_date(2026, 11, 25);
  line.chance_short = 0.41;
  auto& reason = line.reason;
  reason.next_order_day = make_date(2026, 12, 2);
  reason.lead_days = 7;
  reason.protected_until = make_date(2026, 12, 9);
  reason.expected_demand = 2.3;
  reason.service_target = 0.95;
  reason.needs = {need("P0012", Side::left, 0.62, make_date(2026, 11, 28)),
                  need("P0044", Side::right, 0.31, make_date(2026, 12, 1))};
  reason.more_needs = 5;
  reason.needed = 2;
  return line;
}

bool holds(const std::string& text, const std::string& wanted) {
  return text.find(wanted) != std::string::npos;
}

}  // namespace

TEST_CASE("A stocked line says position, who is expected to need it, target and chance") {
  CHECK(
      why(stocked(), {}) ==
      "2 on hand, 0 on order, 0 reserved. Until 9 Dec 2026 (next order day 2 Dec 2026 plus 7 days "
      "to arrive) 2.3 are expected to be needed: P0012 left (62 %, from 28 Nov 2026), P0044 right "
      "(31 %, from 1 Dec 2026), 5 more. 4 cover a 95 % service target. Order by 25 Nov 2026; if "
      "that waits until 2 Dec 2026, the chance to run out is 41 %.");
  CHECK(short_reason(stocked()) == "2 there or coming, 4 wanted");
}

TEST_CASE("With several branches a line says how much is expected to be needed where") {
  ProposalLine line = stocked();
  line.reason.by_place = {{"main store", 1.4}, {"North", 0.9}, {"South", 0.01}};
  CHECK(holds(why(line, {}), ", 5 more. By branch: 1.4 at main store and 0.9 at North. 4 cover"));
  line.reason.by_place = {{"main store", 0.01}, {"North", 0.01}};
  CHECK_FALSE(holds(why(line, {}), "By branch"));
}

TEST_CASE(
    "What is expected for other reasons than wear is told apart, unless it is next to nothing") {
  ProposalLine line = stocked();
  line.reason.expected_not_for_wear = 0.04;
  CHECK(holds(why(line, {}), "2.3 are expected to be needed: P0012"));
  line.reason.expected_not_for_wear = 0.41;
  CHECK(holds(why(line, {}),
              "2.3 are expected to be needed, 0.4 of it for losses, recalls and changes of size, "
              "material or model: P0012"));
  line.reason.needs.clear();
  line.reason.more_needs = 0;
  CHECK(holds(why(line, {}), "changes of size, material or model. 4 cover"));
}

TEST_CASE("New patients and the season are told when they matter") {
  ProposalLine line = stocked();
  line.reason.expected_for_new_patients = 0.31;
  line.reason.season_factor = 1.004;
  CHECK(holds(why(line, {}), "2.3 are expected to be needed, 0.3 of it for new patients: P0012"));
  CHECK(!holds(why(line, {}), "In these weeks"));
  line.reason.expected_not_for_wear = 0.41;
  line.reason.season_factor = 1.2;
  CHECK(holds(why(line, {}), "material or model, 0.3 for new patients: P0012"));
  CHECK(holds(why(line, {}), "In these weeks 20 % more parts of this kind than on average"));
  line.reason.season_factor = 0.8;
  CHECK(holds(why(line, {}), "In these weeks 20 % fewer"));
}

TEST_CASE("What is ordered beyond the need is told with its cause") {
  ProposalLine line = stocked();
  line.quantity = 23;
  line.reason.least_quantity = 5;
  line.reason.saves_a_year = 12345;
  line.reason.for_free_freight = 3;
  line.reason.order_days_covered = 2;
  line.reason.left_out_for_budget = 4;
  line.reason.chance_expires = 0.12;
  line.unit_cost = Money{6000, Currency{"EUR"}};
  const std::string text = why(line, {});
  CHECK(holds(text, "That covers 2 order days, because each order costs freight."));
  CHECK(holds(text,
              "20 at a time cost less than 5, price and keeping together: 123.45 EUR a year at the "
              "present use."));
  CHECK(holds(text, "3 of them are ordered ahead to reach free freight."));
  CHECK(holds(text, "4 more are wanted; the budget went where it prevents more shortages."));
  CHECK(holds(text, "The chance that not all are used before they expire is 12 %."));
  line.reason.target_from_costs = true;
  line.reason.joins_order = true;
  CHECK(holds(why(line, {}), "which follows from the costs of missing and keeping a piece"));
  CHECK(holds(why(line, {}), "this supplier is ordered from today anyway"));
}

TEST_CASE("One is singular") {
  ProposalLine line = stocked();
  line.target = 1;
  line.reason.lead_days = 1;
  line.reason.expected_demand = 1;
  const std::string text = why(line, {});
  CHECK(holds(text, "plus 1 day to arrive"));
  CHECK(holds(text, "1.0 is expected to be needed"));
  CHECK(holds(text, "1 covers a 95 % service target"));
}

TEST_CASE("No chance is put as a certainty") {
  ProposalLine line = stocked();
  line.chance_short = 1;
  line.reason.needs[0].chance = 0.9999;
  line.reason.needs[1].chance = 0.0001;
  CHECK(holds(why(line, {}), "P0012 left (over 99 %"));
  CHECK(holds(why(line, {}), "P0044 right (under 1 %"));
  CHECK(holds(why(line, {}), "the chance to run out is over 99 %"));
  CHECK_FALSE(holds(why(line, {}), "100 %"));
}

TEST_CASE("Assumed and learned lead times, overdue orders and rounding are said") {
  ProposalLine line = stocked();
  line.on_order = 3;
  line.quantity = 10;
  line.reason.overdue = 1;
  line.reason.lead_days_assumed = true;
  line.reason.receipts_seen = 12;
  line.reason.pack_size = 5;
  line.reason.min_order = 6;
  line.reason.least_quantity = 10;
  const std::string text = why(line, {});
  CHECK(holds(text, "3 on order (1 overdue)"));
  CHECK(holds(text, "assumed because the catalogue quotes none, then learned from 12 receipts"));
  CHECK(holds(text, "2 are needed, rounded up to the minimum order of 6 and packs of 5: 10."));
  line.reason.min_order = 1;
  line.quantity = line.reason.least_quantity = 5;
  CHECK(holds(why(line, {}), "2 are needed, rounded up to packs of 5: 5."));
}

TEST_CASE("Stock that does not count is named with the reason") {
  ProposalLine line = stocked();
  StockLevel level{{{"L-28"}, "A17", make_date(2026, 12, 1)}, "main store", 1};
  line.reason.uncounted = {{level, false}};
  CHECK(holds(why(line, {}), "1 not counted: lot A17 at main store, use by 1 Dec 2026."));
  level = {{{"L-28"}, "", std::nullopt}, "quarantine", 2};
  line.reason.uncounted.push_back({level, true});
  CHECK(holds(why(line, {}),
              "3 not counted: 1 of lot A17 at main store, use by 1 Dec 2026; 2 of no "
              "lot number at quarantine, in quarantine."));
}

TEST_CASE("Promised pieces that are not there come before chances") {
  ProposalLine line = stocked();
  line.on_hand = 0;
  line.reserved = 1;
  CHECK(holds(why(line, {}), "1 promised piece is neither on hand nor on order."));
  CHECK(short_reason(line) == "1 promised piece is neither on hand nor on order");
}

TEST_CASE("Pieces booked for visits are told apart, and those for later are not counted") {
  ProposalLine line = stocked();
  line.reserved = 3;
  line.reason.booked = 2;
  line.reason.booked_until = make_date(2026, 12, 9);
  CHECK(holds(why(line, {}), "3 reserved, 2 of them for visits until 9 Dec 2026. Until"));
  line.reason.booked_later = 1;
  CHECK(holds(why(line, {}), "9 Dec 2026. 1 piece is booked for later, and not counted yet."));
  line.reason.booked = 3;
  line.reason.patient_ordered = true;
  CHECK(holds(why(line, {}), "3 reserved, all of them for days until 9 Dec 2026."));
}

TEST_CASE("A patient's line names the patient, the date and the chance") {
  ProposalLine line = stocked();
  line.reason.patient_ordered = true;
  line.reason.needs.resize(1);
  line.reason.more_needs = 0;
  line.reason.needs[0].order_by = make_date(2026, 11, 21);
  CHECK(holds(why(line, {}),
              "Expected to wear out: P0012 left (62 % by 9 Dec 2026, order by "
              "21 Nov 2026). Order by 25 Nov 2026; if that waits until 2 Dec 2026, the "
              "chance that the part is worn out before the order arrives is 41 %"));
  CHECK(short_reason(line) == "for P0012 left");
  line.reason.reserved_for = {{"P7"}};
  CHECK(holds(why(line, {}), "Promised and neither on hand nor on order: P7."));
}

TEST_CASE("Drafts are named as not counted, and what the catalogue lacks is said") {
  Clinic clinic;
  OrderLine draft;
  draft.order_ref = "SW-2026-0003";
  draft.item = {"L-28"};
  draft.quantity = 3;
  draft.state = OrderState::draft;
  clinic.order_lines = {draft};
  ProposalLine line = stocked();
  line.supplier = {};
  line.unit_cost.reset();
  const std::string text = why(line, clinic);
  CHECK(holds(text, "Not counted, because not sent: 3 in draft order SW-2026-0003."));
  CHECK(holds(text, "names no supplier"));
  CHECK(holds(text, "gives no cost"));
}

TEST_CASE("Patients are named by reference only") {
  Clinic clinic;
  Patient patient;
  patient.ref = {"P0012"};
  patient.given_name = "Plainly";
  patient.family_name = "Invented";
  clinic.patients = {patient};
  CHECK_FALSE(holds(why(stocked(), clinic), "Plainly"));
  CHECK_FALSE(holds(why(stocked(), clinic), "Invented"));
}

}  // namespace order_reasons_test
