/// All orders as people look at them: open ones first, the longest overdue at the top.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "supply/order_life.hpp"
#include "supply/receiving.hpp"

namespace sparewell::desk {

struct OrderView {
  supply::Order order;
  supply::OrderStage stage = supply::OrderStage::draft;
  /// Of the lines with pieces to come, in the order of `order.lines`; else empty.
  std::vector<std::optional<supply::ExpectedLine>> expected;
  std::optional<Date> expected_on;  ///< the earliest of them
  int overdue_days = 0;             ///< the longest of them

  /// Not received and not cancelled.
  [[nodiscard]] bool is_open() const;
  [[nodiscard]] int revision() const { return order.header ? order.header->revision : 1; }
  [[nodiscard]] Date created_on() const;
};

/// Open orders first: those overdue by the longest, then by the day on which they are expected,
/// then drafts; after them the others, the newest first.
[[nodiscard]] std::vector<OrderView> order_views(const Clinic& clinic, Date today);

/// "12 days overdue, placed", "partly received, rest on back-order".
[[nodiscard]] std::string view_stage_words(const OrderView& view);
/// "on back-order, promised 3 Dec 2026", "4 days overdue, expected 3 Dec 2026", "complete" ...
[[nodiscard]] std::string line_state_words(const OrderView& view, std::size_t line);
/// Whom the pieces of a line are for: "P-1 left (has come), P-2"; "stock" for nobody named.
[[nodiscard]] std::string line_for_words(const supply::Order& order, const OrderLine& line);

}  // namespace sparewell::desk
