#include "desk/order_book.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/order_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using supply::ExpectedLine;
using supply::OrderStage;
using LineKey = std::tuple<SupplierName, std::string, ItemCode, int>;

LineKey key_of(const OrderLine& line) {
  return {line.supplier, line.order_ref, line.item, line.copy};
}

void note_expected(OrderView& view, const std::map<LineKey, ExpectedLine>& expected) {
  for (const auto& line : view.order.lines) {
    auto& of_line = view.expected.emplace_back();
    const auto found = expected.find(key_of(line));
    if (found == expected.end()) continue;
    of_line = found->second;
    view.expected_on =
        std::min(view.expected_on.value_or(of_line->expected_on), of_line->expected_on);
    view.overdue_days = std::max(view.overdue_days, of_line->overdue_days);
  }
}

std::string overdue_words(int days) {
  return say("{} overdue", count_words(days, "day", "days"));
}

}  // namespace

bool OrderView::is_open() const {
  return stage != OrderStage::received && stage != OrderStage::cancelled;
}

Date OrderView::created_on() const {
  if (order.header) return order.header->created_on;
  return order.lines.front().ordered_on;
}

std::vector<OrderView> order_views(const Clinic& clinic, Date today) {
  std::map<LineKey, ExpectedLine> expected;
  for (auto& line : supply::still_to_come(clinic, {}, today)) {
    auto key = key_of(line.line);
    expected.emplace(std::move(key), std::move(line));
  }
  std::vector<OrderView> made;
  for (auto& order : supply::orders_of(clinic)) {
    OrderView& view = made.emplace_back();
    view.order = std::move(order);
    view.stage = supply::stage_of(view.order, clinic.settings.approval_above);
    note_expected(view, expected);
  }
  std::ranges::stable_sort(made, {}, [](const OrderView& view) {
    const bool open = view.is_open();
    const auto day = open ? view.expected_on.value_or(Date::max()).time_since_epoch()
                          : -view.created_on().time_since_epoch();
    return std::tuple{!open, open ? -view.overdue_days : 0, day};
  });
  return made;
}

std::string view_stage_words(const OrderView& view) {
  // First, so that a narrow column does not hide it.
  std::string text =
      view.overdue_days > 0 ? fmt::format("{}, ", overdue_words(view.overdue_days)) : std::string{};
  text += stage_words(view.stage);
  if (view.stage == OrderStage::partly_received ||
      std::ranges::any_of(view.expected,
                          [](const auto& line) { return line && line->on_back_order; })) {
    text += said(", rest on back-order");
  }
  return text;
}

std::string line_state_words(const OrderView& view, std::size_t at) {
  const OrderLine& line = view.order.lines.at(at);
  if (line.state == OrderState::cancelled) {
    return line.received_quantity > 0 ? said("rest cancelled") : said("cancelled");
  }
  if (line.state == OrderState::draft) return said("not placed");
  const auto& expected = view.expected.at(at);
  if (!expected) return line.outstanding() == 0 ? said("complete") : said("to come");
  std::string text = expected->overdue_days > 0
                         ? fmt::format("{}, ", overdue_words(expected->overdue_days))
                         : std::string{};
  if (expected->on_back_order) text += said("on back-order, ");
  const auto on = date_words(expected->expected_on);
  text += expected->promised_on ? say("promised {}", on) : say("expected {}", on);
  return text;
}

std::string line_for_words(const supply::Order& order, const OrderLine& line) {
  std::string text;
  for (const auto* piece : order.pieces_of(line)) {
    if (!text.empty()) text += ", ";
    text += piece->patient.text;
    if (piece->side) text += fmt::format(" {}", shown_word(*piece->side));
    if (piece->put_away_on) text += said(" (has come)");
  }
  return text.empty() ? said("stock") : text;
}

}  // namespace sparewell::desk
