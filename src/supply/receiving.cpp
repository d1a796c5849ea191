#include "supply/receiving.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>
#include <tuple>

#include "supply/lead_time.hpp"
#include "supply/order_life.hpp"

namespace sparewell::supply {
namespace {

using MatchKind = OrderMatch::Kind;
using Positions = std::vector<std::size_t>;

template <class Wanted>
Positions those(const std::vector<OrderLine>& lines, const Positions& among, Wanted wanted) {
  Positions made;
  for (const std::size_t at : among) {
    if (wanted(lines[at])) made.push_back(at);
  }
  return made;
}

bool is_open(const OrderLine& line) {
  return line.outstanding() > 0;
}

bool is_placed(const OrderLine& line) {
  return line.state == OrderState::placed;
}

bool is_draft(const OrderLine& line) {
  return line.state == OrderState::draft;
}

bool is_one_order(const std::vector<OrderLine>& lines, const Positions& positions) {
  return std::ranges::all_of(positions, [&](std::size_t at) {
    const OrderLine& first = lines[positions.front()];
    return lines[at].supplier == first.supplier && lines[at].order_ref == first.order_ref;
  });
}

/// Lines with pieces to come before full ones, then the oldest first.
void sort_for_filling(const std::vector<OrderLine>& lines, Positions& positions) {
  std::ranges::stable_sort(positions, {}, [&](std::size_t at) {
    const OrderLine& line = lines[at];
    return std::tuple{!is_open(line), line.ordered_on, line.supplier, line.order_ref, line.copy};
  });
}

OrderMatch match_number(const std::vector<OrderLine>& lines, const Positions& of_order,
                        const ItemCode& item) {
  if (of_order.empty()) return {MatchKind::unknown_order, {}};
  const auto of_item = those(lines, of_order, [&](const auto& line) { return line.item == item; });
  if (of_item.empty()) return {MatchKind::wrong_item, of_order};
  auto placed = those(lines, of_item, is_placed);
  if (placed.empty()) {
    const bool drafted = std::ranges::any_of(of_item, [&](auto at) { return is_draft(lines[at]); });
    return {drafted ? MatchKind::draft : MatchKind::cancelled, of_item};
  }
  sort_for_filling(lines, placed);
  return {is_one_order(lines, placed) ? MatchKind::matched : MatchKind::several, std::move(placed)};
}

OrderMatch match_item(const std::vector<OrderLine>& lines, const Positions& of_item) {
  auto open = those(lines, of_item, is_open);
  if (open.empty()) {
    auto drafts = those(lines, of_item, is_draft);
    if (drafts.empty()) return {MatchKind::none_open, {}};
    return {MatchKind::draft, std::move(drafts)};
  }
  sort_for_filling(lines, open);
  return {is_one_order(lines, open) ? MatchKind::matched : MatchKind::several, std::move(open)};
}

std::optional<Date> recorded_use_by(const Delivery& delivery,
                                    const std::vector<StockLevel>& shelf) {
  if (delivery.lot.empty() || !delivery.use_by) return std::nullopt;
  for (const StockLevel& level : shelf) {
    if (level.lot.lot == delivery.lot && level.lot.use_by && level.lot.use_by != delivery.use_by) {
      return level.lot.use_by;
    }
  }
  return std::nullopt;
}

std::vector<ReceivingFinding> findings_of(const Delivery& delivery, const Item& item,
                                          int outstanding, const std::vector<StockLevel>& shelf,
                                          const Accepted& accepted) {
  using Finding = ReceivingFinding::Kind;
  std::vector<ReceivingFinding> made;
  if (delivery.quantity > outstanding) {
    made.push_back({Finding::over_delivered, !accepted.extra, outstanding, std::nullopt});
  }
  if (item.shelf_life_days && !delivery.use_by) {
    made.push_back({Finding::no_use_by, !accepted.no_use_by, 0, std::nullopt});
  }
  if (delivery.use_by && *delivery.use_by < delivery.on) {
    made.push_back({Finding::expired, !is_quarantine(delivery.place) && delivery.sound() > 0, 0,
                    delivery.use_by});
  }
  if (const auto other = recorded_use_by(delivery, shelf)) {
    made.push_back({Finding::other_use_by, false, 0, other});
  }
  return made;
}

using LineKey = std::tuple<SupplierName, std::string, ItemCode, int>;

template <class OfLine>
LineKey line_key(const OfLine& record) {
  return {record.supplier, record.order_ref, record.item, record.copy};
}

std::vector<LineReceipt> fill(const Delivery& delivery, const std::vector<OrderLine>& lines,
                              const Positions& positions) {
  std::vector<LineReceipt> made;
  int left = delivery.counted();
  for (std::size_t i = 0; i < positions.size() && left > 0; ++i) {
    LineReceipt receipt{positions[i], lines[positions[i]], 0};
    const bool takes_rest = i + 1 == positions.size();
    receipt.quantity = takes_rest ? left : std::min(left, receipt.after.outstanding());
    if (receipt.quantity == 0) continue;
    left -= receipt.quantity;
    receipt.after.received_quantity += receipt.quantity;
    receipt.after.received_on = std::max(delivery.on, receipt.after.received_on.value_or(Date{}));
    made.push_back(std::move(receipt));
  }
  return made;
}

/// Into the ledger: the sound pieces to their place, the damaged ones into quarantine.
void note_movements(const Delivery& delivery, const OrderLine& line, Receiving& made) {
  StockMovement movement;
  movement.lot = {delivery.item, delivery.lot, delivery.use_by};
  movement.kind = MovementKind::receipt;
  movement.on = delivery.on;
  movement.reason = "order " + line.order_ref + " of " + line.supplier.text;
  if (delivery.damaged > 0) {
    made.damaged = movement;
    made.damaged->place = quarantine_place;
    made.damaged->quantity = delivery.damaged;
    made.damaged->serials = delivery.damaged_serials;
    made.damaged->reason += ", delivered damaged";
    if (!delivery.damage.empty()) made.damaged->reason += ": " + delivery.damage;
  }
  if (delivery.sound() == 0) return;
  movement.place = delivery.place;
  movement.quantity = delivery.sound();
  movement.serials = delivery.serials;
  made.movement = std::move(movement);
}

}  // namespace

OrderMatch match_order(const std::vector<OrderLine>& lines, const ItemCode& item,
                       const std::string& order_ref, const SupplierName& supplier) {
  Positions candidates;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const bool is_wanted =
        order_ref.empty() ? lines[i].item == item : lines[i].order_ref == order_ref;
    if (is_wanted && (supplier.empty() || lines[i].supplier == supplier)) candidates.push_back(i);
  }
  return order_ref.empty() ? match_item(lines, candidates) : match_number(lines, candidates, item);
}

Receiving receive(const Delivery& delivery, const Item& item, const std::vector<OrderLine>& lines,
                  const OrderMatch& match, const std::vector<StockLevel>& shelf,
                  const Accepted& accepted, const std::vector<KnownSerial>& known) {
  if (match.kind != MatchKind::matched || match.lines.empty() || delivery.quantity < 1 ||
      delivery.damaged < 0 || delivery.sound() < 0) {
    throw std::invalid_argument("a delivery needs an order line and at least one piece");
  }
  int outstanding = 0;
  for (const std::size_t at : match.lines) outstanding += lines[at].outstanding();
  Receiving made;
  made.findings = findings_of(delivery, item, outstanding, shelf, accepted);
  for (const KnownSerial& each : known) {
    made.findings.push_back(
        {ReceivingFinding::Kind::known_serial, !accepted.known_serial, 0, std::nullopt, each});
  }
  if (std::ranges::any_of(made.findings, &ReceivingFinding::stops)) return made;
  made.lines = fill(delivery, lines, match.lines);
  note_movements(delivery, lines[match.lines.front()], made);
  return made;
}

std::vector<ExpectedLine> still_to_come(const Clinic& clinic, const SupplierName& supplier,
                                        Date today) {
  const ClinicIndex index{clinic};
  const LeadTimes lead_times{clinic};
  std::map<LineKey, const OrderPromise*> promises;
  for (const OrderPromise& promise : clinic.order_promises) promises[line_key(promise)] = &promise;
  std::vector<ExpectedLine> made;
  for (const OrderLine& line : clinic.order_lines) {
    if (!is_open(line) || (!supplier.empty() && line.supplier != supplier)) continue;
    Item item;
    if (const Item* known = index.item(line.item)) item = *known;
    item.supplier = line.supplier;  // whoever the order went to, whatever the catalogue says now
    const LeadTime lead = lead_times.of(item);
    ExpectedLine expected{line, lead.mean_days(), lead.assumed(), {}, 0, {}, false};
    expected.expected_on = line.ordered_on + days{expected.lead_days};
    const auto promise = promises.find(line_key(line));
    const OrderPromise* promised = promise == promises.end() ? nullptr : promise->second;
    expected.on_back_order = is_on_back_order(line, promised);
    if (promised != nullptr && promised->promised_on) {
      expected.promised_on = promised->promised_on;
      expected.expected_on = *promised->promised_on;
    }
    expected.overdue_days = std::max(0, days_between(expected.expected_on, today));
    made.push_back(std::move(expected));
  }
  std::ranges::sort(made, {}, [](const ExpectedLine& expected) {
    const OrderLine& line = expected.line;
    return std::tie(expected.expected_on, line.supplier, line.order_ref, line.item, line.copy);
  });
  return made;
}

}  // namespace sparewell::supply
