#include "supply/order_life.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace sparewell::supply {
namespace {

using Key = std::pair<SupplierName, std::string>;

template <class Record>
Key key_of(const Record& record) {
  return {record.supplier, record.order_ref};
}

template <class Part>
bool belongs_to(const Part& part, const OrderLine& line) {
  return part.item == line.item && part.copy == line.copy;
}

bool is_cancelled(const OrderLine& line) {
  return line.state == OrderState::cancelled;
}

bool is_draft(const OrderLine& line) {
  return line.state == OrderState::draft;
}

OrderStage stage_of_draft(const Order& order, const std::optional<Money>& limit) {
  return needs_approval(order.lines, order.header, limit) ? OrderStage::waiting_for_approval
                                                          : OrderStage::draft;
}

}  // namespace

const OrderPromise* Order::promise(const OrderLine& line) const {
  const auto found = std::ranges::find_if(
      promises, [&](const OrderPromise& promise) { return belongs_to(promise, line); });
  return found == promises.end() ? nullptr : &*found;
}

std::vector<const OrderPiece*> Order::pieces_of(const OrderLine& line) const {
  std::vector<const OrderPiece*> made;
  for (const OrderPiece& piece : pieces) {
    if (belongs_to(piece, line)) made.push_back(&piece);
  }
  return made;
}

int Order::ordered() const {
  int total = 0;
  for (const OrderLine& line : lines) {
    total += is_cancelled(line) ? line.received_quantity : line.quantity;
  }
  return total;
}

int Order::received() const {
  int total = 0;
  for (const OrderLine& line : lines) total += line.received_quantity;
  return total;
}

int Order::outstanding() const {
  int total = 0;
  for (const OrderLine& line : lines) total += line.outstanding();
  return total;
}

std::vector<Order> orders_of(const Clinic& clinic) {
  std::vector<Order> made;
  std::map<Key, std::size_t> places;
  for (const OrderLine& line : clinic.order_lines) {
    const auto [place, is_new] = places.emplace(key_of(line), made.size());
    if (is_new) made.push_back({line.supplier, line.order_ref, {}, {}, {}, {}});
    made[place->second].lines.push_back(line);
  }
  const auto order = [&](const auto& record) -> Order* {
    const auto place = places.find(key_of(record));
    return place == places.end() ? nullptr : &made[place->second];
  };
  for (const auto& header : clinic.order_headers) {
    if (auto* of = order(header)) of->header = header;
  }
  for (const auto& promise : clinic.order_promises) {
    if (auto* of = order(promise)) of->promises.push_back(promise);
  }
  for (const auto& piece : clinic.order_pieces) {
    if (auto* of = order(piece)) of->pieces.push_back(piece);
  }
  return made;
}

OrderWorth worth_of(const std::vector<OrderLine>& lines, const Currency& currency) {
  OrderWorth made{{0, currency}, 0};
  for (const OrderLine& line : lines) {
    if (is_cancelled(line)) continue;
    if (line.unit_cost && line.unit_cost->currency == currency) {
      made.known = made.known + *line.unit_cost * line.quantity;
    } else {
      made.unpriced += line.quantity;
    }
  }
  return made;
}

bool needs_approval(const std::vector<OrderLine>& lines, const std::optional<OrderHeader>& header,
                    const std::optional<Money>& limit) {
  if (!limit) return false;
  const OrderWorth worth = worth_of(lines, limit->currency);
  // What is not priced may cost anything.
  if (worth.known.minor <= limit->minor && worth.unpriced == 0) return false;
  if (!header || !header->approved_on) return true;
  const bool known_is_approved = header->approved_sum &&
                                 header->approved_sum->currency == limit->currency &&
                                 worth.known.minor <= header->approved_sum->minor;
  return !known_is_approved || worth.unpriced > header->approved_unpriced;
}

OrderStage stage_of(const Order& order, const std::optional<Money>& limit) {
  if (order.header && order.header->cancelled_on) return OrderStage::cancelled;
  const bool anything_left = !std::ranges::all_of(order.lines, is_cancelled);
  if (!anything_left && order.received() == 0) return OrderStage::cancelled;
  if (std::ranges::any_of(order.lines, is_draft)) return stage_of_draft(order, limit);
  if (order.outstanding() == 0) return OrderStage::received;
  return order.received() > 0 ? OrderStage::partly_received : OrderStage::placed;
}

bool is_on_back_order(const OrderLine& line, const OrderPromise* promise) {
  if (line.outstanding() == 0) return false;
  return line.received_quantity > 0 || (promise != nullptr && promise->on_back_order);
}

std::vector<std::size_t> first_served(const std::vector<OrderPiece>& pieces, int arrived) {
  std::vector<std::size_t> waiting;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (!pieces[i].put_away_on) waiting.push_back(i);
  }
  std::ranges::stable_sort(waiting, {}, [&](std::size_t at) {
    const OrderPiece& piece = pieces[at];
    return std::tuple{!piece.needed_on.has_value(), piece.needed_on.value_or(Date{}), piece.copy,
                      piece.position};
  });
  const auto served = static_cast<std::size_t>(std::max(0, arrived));
  if (waiting.size() > served) waiting.resize(served);
  return waiting;
}

}  // namespace sparewell::supply
