#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"
#include "supply/holding_back.hpp"
#include "supply/lending.hpp"
#include "supply/recall.hpp"
#include "supply/reversal.hpp"
#include "supply/stock_position.hpp"
#include "supply/supplier_credit.hpp"
#include "supply/transfer.hpp"

namespace stock_work_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

const Lot lot_a{{"L1"}, "A", today + days{90}};

StockView view_of(std::vector<StockLevel> levels, std::vector<Place> places = {}) {
  return {std::move(levels), std::move(places)};
}

Pieces some(int quantity, const std::string& place = "main store") {
  return {{"L1"}, "A", std::nullopt, place, quantity};
}

int sum_of(const std::vector<StockMovement>& movements) {
  int sum = 0;
  for (const auto& movement : movements) sum += movement.quantity;
  return sum;
}

}  // namespace

TEST_CASE("What is sent leaves its place and lies in transit to the other") {
  const auto view = view_of({{lot_a, "main store", 5}});
  const auto sent = transfer(view, some(3), "branch", Travel::sent, today, "");
  REQUIRE(sent);
  REQUIRE(sent->movements.size() == 2);
  CHECK(sent->movements[0].place == "main store");
  CHECK(sent->movements[0].quantity == -3);
  CHECK(sent->movements[1].place == "in transit to branch");
  CHECK(sum_of(sent->movements) == 0);
  REQUIRE(sent->new_places.size() == 1);
  CHECK(sent->new_places[0] == Place{"in transit to branch", PlaceSort::in_transit, "branch"});
  const auto at_once = transfer(view, some(3), "branch", Travel::at_once, today, "");
  REQUIRE(at_once);
  CHECK(at_once->movements[1].place == "branch");
  CHECK(at_once->new_places.empty());
}

TEST_CASE("More than lies there is not moved, and nothing moves out of quarantine by a transfer") {
  const auto view = view_of({{lot_a, "main store", 2}, {lot_a, "quarantine", 4}});
  const auto many = transfer(view, some(3), "branch", Travel::sent, today, "");
  REQUIRE_FALSE(many);
  CHECK(many.error().kind == MoveRefusal::too_few);
  CHECK(many.error().there.front().quantity == 2);
  CHECK(transfer(view, some(1, "quarantine"), "branch", Travel::at_once, today, "").error().kind ==
        MoveRefusal::held_back);
  CHECK(transfer(view, some(1), "quarantine", Travel::at_once, today, "").error().kind ==
        MoveRefusal::target_no_store);
  CHECK(transfer(view, some(1), "on loan", Travel::at_once, today, "").error().kind ==
        MoveRefusal::target_no_place);
  CHECK(transfer(view, some(0), "branch", Travel::at_once, today, "").error().kind ==
        MoveRefusal::no_quantity);
}

TEST_CASE("A difference on arrival needs a reason and is booked") {
  const auto view = view_of({{lot_a, "in transit to branch", 4}}, {transit_place("branch")});
  Arrival arrival{{"L1"}, {}, {}, "branch", 3, false, ""};
  const auto part = arrive(view, arrival, today);
  REQUIRE(part);
  CHECK(part->still_out == 1);
  CHECK(sum_of(part->move.movements) == 0);
  arrival.rest_is_lost = true;
  CHECK(arrive(view, arrival, today).error().kind == MoveRefusal::no_reason);
  arrival.reason = "box was open";
  const auto short_one = arrive(view, arrival, today);
  REQUIRE(short_one);
  CHECK(short_one->lost == 1);
  CHECK(sum_of(short_one->move.movements) == -1);
  CHECK(short_one->move.movements.back().kind == MovementKind::write_off);
  arrival.quantity = 6;
  const auto more = arrive(view, arrival, today);
  REQUIRE(more);
  CHECK(more->extra == 2);
  CHECK(sum_of(more->move.movements) == 2);
}

TEST_CASE("Only an expired lot is written off as expired") {
  const auto view = view_of({{lot_a, "main store", 2}});
  CHECK(write_off(view, some(1), WriteOff::expired, today, "").error().kind ==
        MoveRefusal::not_expired);
  CHECK(write_off(view, some(1), WriteOff::expired, *lot_a.use_by, "").error().kind ==
        MoveRefusal::not_expired);
  const auto gone = write_off(view, some(1), WriteOff::expired, *lot_a.use_by + days{1}, "");
  REQUIRE(gone);
  CHECK(gone->movements[0].reason == "expired");
}

TEST_CASE("A loan ends in parts, and never with more than was lent") {
  const auto view = view_of({{lot_a, "on loan", 3}}, {loan_place()});
  Loan loan;
  loan.number = 7;
  loan.lot = lot_a;
  loan.quantity = 3;
  LoanEnd end;
  end.came_back = 1;
  end.kept = 1;
  CHECK(settle_loan(view, loan, end, today).error().kind == LoanRefusal::no_place);
  end.place = "main store";
  const auto settled = settle_loan(view, loan, end, today);
  REQUIRE(settled);
  CHECK(settled->after.outstanding() == 1);
  CHECK(sum_of(settled->movements) == -1);
  CHECK(settled->movements.back().kind == MovementKind::issue);
  end.lost = 2;
  CHECK(settle_loan(view, loan, end, today).error().kind == LoanRefusal::too_many);
  end.lost = 1;
  CHECK(settle_loan(view, loan, end, today).error().kind == LoanRefusal::no_reason);
}

TEST_CASE("A credit closes its return when all of it has come, or when it is the last") {
  const Currency euro{"EUR"};
  SupplierReturn sent;
  sent.number = 1;
  sent.supplier = {"Tern"};
  sent.lot = lot_a;
  sent.quantity = 2;
  sent.due = Money{5000, euro};
  const auto view = view_of({{lot_a, "at supplier Tern", 2}}, {supplier_place("Tern")});
  const auto part = credit(view, sent, {Money{2000, euro}, false, false, "", ""}, today);
  REQUIRE(part);
  CHECK(part->after.is_open());
  CHECK(part->movements.empty());
  CHECK(credit_sums({part->after, sent}) == std::vector<Money>{Money{8000, euro}});
  CHECK(credit(view, part->after, {Money{3001, euro}, false, false, "", ""}, today).error().kind ==
        CreditRefusal::too_much);
  const auto rest = credit(view, part->after, {Money{3000, euro}, false, false, "", ""}, today);
  REQUIRE(rest);
  CHECK_FALSE(rest->after.is_open());
  CHECK(sum_of(rest->movements) == -2);
  const auto back = credit(view, sent, {std::nullopt, false, false, "quarantine", ""}, today);
  REQUIRE(back);
  CHECK(sum_of(back->movements) == 0);
  CHECK(credit(view, sent, {std::nullopt, false, false, "", ""}, today).error().kind ==
        CreditRefusal::nothing);
  CHECK(credit(view, sent, {Money{1, {"USD"}}, true, false, "", ""}, today).error().kind ==
        CreditRefusal::other_currency);
}

TEST_CASE("A reversal undoes a booking unless its pieces have moved on") {
  const std::vector<StockMovement> booked{
      {lot_a, "main store", MovementKind::transfer, -3, today, ""},
      {lot_a, "branch", MovementKind::transfer, 3, today, ""}};
  const auto back = reverse(booked, {{lot_a, "branch", 3}}, today, "wrong branch");
  REQUIRE(back);
  CHECK(back->front().quantity == 3);
  CHECK(back->front().place == "main store");
  CHECK(sum_of(*back) == 0);
  const auto gone = reverse(booked, {{lot_a, "branch", 2}}, today, "wrong branch");
  REQUIRE_FALSE(gone);
  CHECK(gone.error() == StockLevel{lot_a, "branch", 2});
}

TEST_CASE("Only stores count as on hand; what is in transit is on its way") {
  Clinic clinic = clinic_with_item();
  clinic.places = {transit_place("branch"),
                   loan_place(),
                   supplier_place("Tern"),
                   {"cage", PlaceSort::quarantine, ""}};
  add_stock(clinic, 1, std::nullopt, "branch");
  add_stock(clinic, 2, std::nullopt, "in transit to branch");
  add_stock(clinic, 4, std::nullopt, "on loan");
  add_stock(clinic, 8, std::nullopt, "at supplier Tern");
  add_stock(clinic, 16, std::nullopt, "cage");
  const auto position = StockBook{clinic}.position({"L1"}, today, today, today);
  CHECK(position.on_hand == 1);
  CHECK(position.in_transit == 2);
  CHECK(position.total() == 3);
  CHECK(position.uncounted.size() == 3);
}

TEST_CASE("A recall names parts on loan and moves only what lies in a store") {
  ItemRecords records;
  records.places = {loan_place(), transit_place("branch")};
  records.shelf = {
      {lot_a, "main store", 1}, {lot_a, "on loan", 2}, {lot_a, "in transit to branch", 4}};
  Loan loan;
  loan.number = 1;
  loan.patient = {"P7"};
  loan.lot = lot_a;
  loan.quantity = 2;
  records.loans = {loan};
  const auto recall = find_recalled({"L1"}, "A", records, today);
  REQUIRE(recall.loans.size() == 1);
  CHECK(recall.loans[0].loan.patient.text == "P7");
  const auto moved = transfers_to_quarantine(recall, "notice");
  REQUIRE(moved.size() == 2);
  CHECK(moved[0].place == "main store");
}

}  // namespace stock_work_test
