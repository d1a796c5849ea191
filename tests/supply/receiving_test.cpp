#include "supply/receiving.hpp"

#include <random>

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace receiving_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

using Match = OrderMatch::Kind;
using Finding = ReceivingFinding::Kind;

const ItemCode item{"L1"};

OrderLine line(const std::string& ref, int quantity, int received, int days_ago = 10,
               OrderState state = OrderState::placed) {
  OrderLine made = placed(quantity, today - days{days_ago}, ref);
  made.received_quantity = received;
  made.state = state;
  return made;
}

OrderLine of(OrderLine made, const std::string& other_item) {
  made.item = {other_item};
  return made;
}

OrderLine from(OrderLine made, const std::string& supplier) {
  made.supplier = {supplier};
  return made;
}

Delivery delivery(int quantity) {
  return {item, quantity, "A17", make_date(2029, 1, 31), "main store", today};
}

Item with_shelf_life() {
  Item made = stocked_item("L1");
  made.shelf_life_days = 730;
  return made;
}

std::vector<Finding> kinds(const Receiving& receiving) {
  std::vector<Finding> made;
  for (const auto& finding : receiving.findings) made.push_back(finding.kind);
  return made;
}

Receiving received(const Delivery& what, const std::vector<OrderLine>& lines,
                   const Accepted& accepted = {}, const std::vector<StockLevel>& shelf = {}) {
  const auto match = match_order(lines, item, "O1", {});
  REQUIRE(match.kind == Match::matched);
  return receive(what, with_shelf_life(), lines, match, shelf, accepted);
}

}  // namespace

TEST_CASE("An order is found by its number, and refused for what it is") {
  const auto kind = [](std::vector<OrderLine> lines) {
    return match_order(lines, item, "O1", {}).kind;
  };
  CHECK(kind({}) == Match::unknown_order);
  CHECK(kind({line("O2", 1, 0)}) == Match::unknown_order);
  CHECK(kind({line("O1", 1, 0)}) == Match::matched);
  CHECK(kind({line("O1", 1, 1)}) == Match::matched);  // more than ordered is a finding, no refusal
  CHECK(kind({of(line("O1", 1, 0), "L2")}) == Match::wrong_item);
  CHECK(kind({line("O1", 1, 0, 9, OrderState::draft)}) == Match::draft);
  CHECK(kind({line("O1", 1, 0, 9, OrderState::cancelled)}) == Match::cancelled);
  CHECK(kind({line("O1", 1, 0, 9, OrderState::cancelled), line("O1", 1, 0)}) == Match::matched);
  CHECK(kind({line("O1", 1, 0), from(line("O1", 1, 0), "Other")}) == Match::several);
}

TEST_CASE("Two suppliers with one order number are told apart by name") {
  const std::vector<OrderLine> lines{line("O1", 1, 0), from(line("O1", 1, 0), "Other")};
  const auto match = match_order(lines, item, "O1", {"Other"});
  CHECK(match.kind == Match::matched);
  CHECK(match.lines == std::vector<std::size_t>{1});
  CHECK(match_order(lines, item, "O1", {"Nobody"}).kind == Match::unknown_order);
}

TEST_CASE("Without a number the only open order of the item is taken") {
  const std::vector<OrderLine> lines{line("O1", 2, 2), line("O2", 2, 1), of(line("O3", 2, 0), "L2"),
                                     line("O4", 2, 0, 9, OrderState::draft),
                                     line("O5", 2, 0, 9, OrderState::cancelled)};
  const auto match = match_order(lines, item, "", {});
  CHECK(match.kind == Match::matched);
  CHECK(match.lines == std::vector<std::size_t>{1});
  auto more = lines;
  more.push_back(line("O6", 1, 0, 50));
  const auto several = match_order(more, item, "", {});
  CHECK(several.kind == Match::several);
  CHECK(several.lines == std::vector<std::size_t>{5, 1});  // the oldest first
  CHECK(match_order({lines[0], lines[4]}, item, "", {}).kind == Match::none_open);
  CHECK(match_order({lines[0], lines[3]}, item, "", {}).kind == Match::draft);
}

TEST_CASE("A part of an order is received, and the rest stays to come") {
  const auto first = received(delivery(2), {line("O1", 5, 1)});
  CHECK(first.findings.empty());
  REQUIRE(first.lines.size() == 1);
  CHECK(first.lines[0].quantity == 2);
  CHECK(first.lines[0].after.received_quantity == 3);
  CHECK(first.lines[0].after.received_on == today);
  CHECK(first.lines[0].after.outstanding() == 2);
  const StockMovement expected{
      {item, "A17", make_date(2029, 1, 31)}, "main store", MovementKind::receipt, 2, today,
      "order O1 of Example Supplies"};
  REQUIRE(first.movement);
  CHECK(*first.movement == expected);
}

TEST_CASE("More than ordered is taken only when it is accepted") {
  const std::vector<OrderLine> lines{line("O1", 5, 1)};
  const auto stopped = received(delivery(6), lines);
  CHECK(kinds(stopped) == std::vector{Finding::over_delivered});
  CHECK(stopped.is_stopped());
  CHECK(stopped.lines.empty());
  CHECK(stopped.findings[0].outstanding == 4);
  const auto taken = received(delivery(6), lines, {.extra = true, .no_use_by = false});
  CHECK(kinds(taken) == std::vector{Finding::over_delivered});
  CHECK_FALSE(taken.findings[0].stops);
  CHECK(taken.lines[0].after.received_quantity == 7);
  CHECK(taken.movement->quantity == 6);
  CHECK(received(delivery(1), {line("O1", 5, 5)}).is_stopped());
}

TEST_CASE("A missing use-by date counts only for items with a shelf life") {
  auto undated = delivery(1);
  undated.use_by.reset();
  const std::vector<OrderLine> lines{line("O1", 5, 0)};
  CHECK(kinds(received(undated, lines)) == std::vector{Finding::no_use_by});
  CHECK(received(undated, lines).is_stopped());
  const auto taken = received(undated, lines, {.extra = false, .no_use_by = true});
  CHECK(kinds(taken) == std::vector{Finding::no_use_by});
  CHECK_FALSE(taken.is_stopped());
  const auto match = match_order(lines, item, "O1", {});
  CHECK(receive(undated, stocked_item("L1"), lines, match, {}, {}).findings.empty());
}

TEST_CASE("Expired parts go to quarantine or nowhere; the last day still counts") {
  const std::vector<OrderLine> lines{line("O1", 5, 0)};
  auto old = delivery(1);
  old.use_by = today - days{1};
  CHECK(kinds(received(old, lines)) == std::vector{Finding::expired});
  CHECK(received(old, lines).is_stopped());
  old.place = "Quarantine";
  CHECK_FALSE(received(old, lines).is_stopped());
  old.place = "main store";
  old.use_by = today;
  CHECK(received(old, lines).findings.empty());
}

TEST_CASE("Another use-by date of the same lot is pointed out") {
  const StockLevel same{{item, "A17", make_date(2028, 1, 31)}, "room 2", 3};
  const StockLevel other{{item, "B1", make_date(2028, 1, 31)}, "room 2", 3};
  const auto made = received(delivery(1), {line("O1", 5, 0)}, {}, {other, same});
  CHECK(kinds(made) == std::vector{Finding::other_use_by});
  CHECK_FALSE(made.is_stopped());
  CHECK(made.findings[0].use_by == make_date(2028, 1, 31));
  CHECK(received(delivery(1), {line("O1", 5, 0)}, {}, {other}).findings.empty());
}

TEST_CASE("Whatever comes in whatever parts, lines and ledger agree, and no line is passed over") {
  std::mt19937 random{20261125};
  for (int round = 0; round < 500; ++round) {
    std::vector<OrderLine> lines;
    for (int copy = 1; copy <= 1 + static_cast<int>(random() % 4); ++copy) {
      lines.push_back(line("O1", 1 + static_cast<int>(random() % 6), 0));
      lines.back().copy = copy;
    }
    int ordered = 0;
    for (const auto& one : lines) ordered += one.quantity;
    int in_ledger = 0;
    while (true) {
      const int quantity = 1 + static_cast<int>(random() % 5);
      const auto made = received(delivery(quantity), lines);
      CHECK(made.is_stopped() == (in_ledger + quantity > ordered));
      if (made.is_stopped()) break;
      in_ledger += made.movement->quantity;
      for (const auto& receipt : made.lines) lines[receipt.line] = receipt.after;
      int on_lines = 0;
      bool open_before = false;
      for (const auto& one : lines) {
        on_lines += one.received_quantity;
        CHECK(one.received_quantity <= one.quantity);
        CHECK_FALSE((open_before && one.received_quantity > 0));
        open_before = open_before || one.outstanding() > 0;
      }
      CHECK(on_lines == in_ledger);
    }
  }
}

TEST_CASE("What is still to come is expected by the learned lead time") {
  Clinic clinic = clinic_with_item();
  // By hand, as in the tests of the lead time: 7 quoted with weight 5, 9 four times, 17 once: 8.8.
  for (int i = 0; i < 5; ++i) clinic.order_lines.push_back(received_after(i < 4 ? 9 : 17, i));
  clinic.order_lines.push_back(line("open", 4, 1, 20));
  clinic.order_lines.push_back(line("young", 4, 0, 3));
  clinic.order_lines.push_back(line("draft", 4, 0, 90, OrderState::draft));
  clinic.order_lines.push_back(from(line("other", 4, 0, 30), "Other"));
  const auto expected = still_to_come(clinic, {}, today);
  REQUIRE(expected.size() == 3);
  CHECK(expected[0].line.order_ref == "other");
  CHECK(expected[0].lead_days == 7);  // nothing was learned of that supplier
  CHECK(expected[0].overdue_days == 23);
  CHECK(expected[1].line.order_ref == "open");
  CHECK(expected[1].lead_days == 9);
  CHECK(expected[1].expected_on == today - days{11});
  CHECK(expected[1].overdue_days == 11);
  CHECK(expected[2].overdue_days == 0);
  CHECK(still_to_come(clinic, {"Other"}, today).size() == 1);
}

TEST_CASE("A promised day takes the place of the learned lead time") {
  Clinic clinic = clinic_with_item();
  clinic.order_lines = {line("O1", 5, 0, 30)};
  CHECK(still_to_come(clinic, {}, today).front().overdue_days > 0);
  OrderPromise promise;
  promise.supplier = clinic.order_lines[0].supplier;
  promise.order_ref = "O1";
  promise.item = clinic.order_lines[0].item;
  promise.promised_on = today + days{4};
  promise.on_back_order = true;
  clinic.order_promises = {promise};
  const auto expected = still_to_come(clinic, {}, today).front();
  CHECK(expected.expected_on == today + days{4});
  CHECK(expected.promised_on == today + days{4});
  CHECK(expected.overdue_days == 0);
  CHECK(expected.on_back_order);
}

TEST_CASE("Damaged pieces are still to come, unless they are settled") {
  auto broken = delivery(3);
  broken.damaged = 1;
  const auto owed = received(broken, {line("O1", 3, 0)});
  CHECK(owed.findings.empty());
  CHECK(owed.movement->quantity == 2);
  CHECK(owed.damaged->quantity == 1);
  CHECK(owed.damaged->place == quarantine_place);
  CHECK(is_quarantine(owed.damaged->place));
  CHECK(owed.lines[0].after.outstanding() == 1);
  broken.damaged_settled = true;
  CHECK(received(broken, {line("O1", 3, 0)}).lines[0].after.outstanding() == 0);
  broken.damaged = 3;
  broken.damaged_settled = false;
  const auto nothing_sound = received(broken, {line("O1", 3, 0)});
  CHECK_FALSE(nothing_sound.movement.has_value());
  CHECK_FALSE(nothing_sound.is_stopped());
  CHECK(nothing_sound.lines.empty());
}

}  // namespace receiving_test
