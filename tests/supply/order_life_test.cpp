#include "supply/order_life.hpp"

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace order_life_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

const Currency euro{"EUR"};

Money euros(int whole) {
  return {whole * 100, euro};
}

OrderLine line(int quantity, int received, OrderState state = OrderState::placed) {
  OrderLine made = placed(quantity, today - days{10}, "O1");
  made.received_quantity = received;
  made.state = state;
  made.unit_cost = euros(10);
  return made;
}

Order order(std::vector<OrderLine> lines) {
  Order made;
  made.ref = "O1";
  made.lines = std::move(lines);
  return made;
}

OrderPiece piece(int position, std::optional<Date> needed_on) {
  OrderPiece made;
  made.position = position;
  made.needed_on = needed_on;
  return made;
}

}  // namespace

TEST_CASE("The stage of an order follows from its lines") {
  const auto stage = [](std::vector<OrderLine> lines) {
    return stage_of(order(std::move(lines)), std::nullopt);
  };
  CHECK(stage({line(2, 0, OrderState::draft)}) == OrderStage::draft);
  CHECK(stage({line(2, 0), line(1, 0)}) == OrderStage::placed);
  CHECK(stage({line(2, 1), line(1, 0)}) == OrderStage::partly_received);
  CHECK(stage({line(2, 2), line(1, 0)}) == OrderStage::partly_received);
  CHECK(stage({line(2, 2), line(1, 3)}) == OrderStage::received);
  CHECK(stage({line(2, 2), line(1, 0, OrderState::cancelled)}) == OrderStage::received);
  CHECK(stage({line(2, 0), line(1, 0, OrderState::cancelled)}) == OrderStage::placed);
  CHECK(stage({line(2, 0, OrderState::cancelled)}) == OrderStage::cancelled);
  CHECK(stage({line(2, 1, OrderState::cancelled)}) == OrderStage::received);
}

TEST_CASE("An order that was cancelled as a whole is cancelled, whatever had come of it") {
  auto made = order({line(2, 1, OrderState::cancelled)});
  made.header = OrderHeader{};
  made.header->cancelled_on = today;
  CHECK(stage_of(made, std::nullopt) == OrderStage::cancelled);
  CHECK(made.received() == 1);
  CHECK(made.ordered() == 1);
  CHECK(made.outstanding() == 0);
}

TEST_CASE("A draft above the limit waits until its sum has been approved") {
  auto made = order({line(6, 0, OrderState::draft)});
  CHECK(stage_of(made, std::nullopt) == OrderStage::draft);
  CHECK(stage_of(made, euros(60)) == OrderStage::draft);
  CHECK(stage_of(made, euros(59)) == OrderStage::waiting_for_approval);
  made.header = OrderHeader{};
  CHECK(stage_of(made, euros(59)) == OrderStage::waiting_for_approval);
  made.header->approved_by = "A person";
  made.header->approved_on = today;
  made.header->approved_sum = euros(60);
  CHECK(stage_of(made, euros(59)) == OrderStage::draft);
  made.lines[0].quantity = 7;
  CHECK(stage_of(made, euros(59)) == OrderStage::waiting_for_approval);
  made.lines[0].quantity = 5;
  CHECK(stage_of(made, euros(1)) == OrderStage::draft);
}

TEST_CASE("What has no known cost, or one in another currency, is never taken for cheap") {
  auto unknown = line(2, 0, OrderState::draft);
  unknown.unit_cost.reset();
  auto foreign = line(3, 0, OrderState::draft);
  foreign.unit_cost = Money{1, {"USD"}};
  CHECK(worth_of({unknown, foreign, line(4, 0)}, euro).known == euros(40));
  CHECK(worth_of({unknown, foreign, line(4, 0)}, euro).unpriced == 5);
  for (const auto& one : {unknown, foreign}) {
    CHECK(needs_approval({one}, std::nullopt, euros(1000)));
    CHECK_FALSE(needs_approval({one}, std::nullopt, std::nullopt));
    OrderHeader header;
    header.approved_on = today;
    header.approved_sum = euros(0);
    header.approved_unpriced = one.quantity;
    CHECK_FALSE(needs_approval({one}, header, euros(1000)));
    header.approved_unpriced -= 1;
    CHECK(needs_approval({one}, header, euros(1000)));
  }
  auto cancelled = unknown;
  cancelled.state = OrderState::cancelled;
  CHECK_FALSE(needs_approval({cancelled}, std::nullopt, euros(1000)));
}

TEST_CASE("A line is on back-order when a part of it came, or the supplier said so") {
  OrderPromise promise;
  CHECK_FALSE(is_on_back_order(line(2, 0), nullptr));
  CHECK_FALSE(is_on_back_order(line(2, 0), &promise));
  CHECK(is_on_back_order(line(2, 1), nullptr));
  promise.on_back_order = true;
  CHECK(is_on_back_order(line(2, 0), &promise));
  CHECK_FALSE(is_on_back_order(line(2, 2), &promise));
}

TEST_CASE("Who needs a piece first gets it first, and nobody twice") {
  std::vector<OrderPiece> pieces{piece(1, std::nullopt), piece(2, today + days{9}),
                                 piece(3, today + days{2}), piece(4, today + days{9})};
  using Positions = std::vector<std::size_t>;
  CHECK(first_served(pieces, 0).empty());
  CHECK(first_served(pieces, 1) == Positions{2});
  CHECK(first_served(pieces, 3) == Positions{2, 1, 3});
  CHECK(first_served(pieces, 9) == Positions{2, 1, 3, 0});
  pieces[2].put_away_on = today;
  CHECK(first_served(pieces, 2) == Positions{1, 3});
}

TEST_CASE("Orders are brought together by supplier and number") {
  Clinic clinic;
  auto other = line(1, 0);
  other.supplier = {"Other"};
  auto second = line(3, 1);
  second.item = {"L2"};
  clinic.order_lines = {line(2, 0), other, second};
  OrderHeader header;
  header.supplier = other.supplier;
  header.order_ref = "O1";
  clinic.order_headers = {header};
  OrderPiece for_somebody = piece(1, today);
  for_somebody.supplier = second.supplier;
  for_somebody.order_ref = "O1";
  for_somebody.item = second.item;
  clinic.order_pieces = {for_somebody};
  const auto orders = orders_of(clinic);
  REQUIRE(orders.size() == 2);
  CHECK(orders[0].lines.size() == 2);
  CHECK_FALSE(orders[0].header.has_value());
  CHECK(orders[0].pieces_of(second).size() == 1);
  CHECK(orders[0].pieces_of(line(2, 0)).empty());
  CHECK(orders[0].ordered() == 5);
  CHECK(orders[1].header == header);
}

}  // namespace order_life_test
