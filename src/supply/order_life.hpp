/// The life of an order, from draft to received: everything here follows from its records.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::supply {

/// One order with all that is kept of it.
struct Order {
  SupplierName supplier;
  std::string ref;
  std::optional<OrderHeader> header;  ///< empty for orders that were imported
  std::vector<OrderLine> lines;       ///< in the order in which they were added
  std::vector<OrderPromise> promises;
  std::vector<OrderPiece> pieces;

  /// nullptr when nothing was promised for the line.
  [[nodiscard]] const OrderPromise* promise(const OrderLine& line) const;
  /// The pieces of the line, in their order.
  [[nodiscard]] std::vector<const OrderPiece*> pieces_of(const OrderLine& line) const;
  /// Pieces ordered, received and to come, over all lines that are not cancelled; a cancelled
  /// line counts with what came of it.
  [[nodiscard]] int ordered() const;
  [[nodiscard]] int received() const;
  [[nodiscard]] int outstanding() const;
};

/// The orders of the clinic in the order of their first lines.
[[nodiscard]] std::vector<Order> orders_of(const Clinic& clinic);

enum class OrderStage {
  draft,
  waiting_for_approval,  ///< a draft that a named person has to approve first
  placed,
  partly_received,
  received,
  cancelled
};

/// What an order costs. Costs in another currency cannot be compared and count as unpriced.
struct OrderWorth {
  Money known;       ///< of the lines whose cost is known in this currency
  int unpriced = 0;  ///< pieces of the others
};

/// Of the lines that are not cancelled.
[[nodiscard]] OrderWorth worth_of(const std::vector<OrderLine>& lines, const Currency& currency);

/// Whether `lines` may only be placed after a named person has approved them: their sum is above
/// `limit`, or cannot be told, and more than what `header` says was approved. An empty limit asks
/// for no approval.
[[nodiscard]] bool needs_approval(const std::vector<OrderLine>& lines,
                                  const std::optional<OrderHeader>& header,
                                  const std::optional<Money>& limit);

/// A line that is cancelled counts as settled with what came of it; an order whose lines all are
/// is cancelled, unless pieces had come of it and it was not cancelled as a whole.
[[nodiscard]] OrderStage stage_of(const Order& order, const std::optional<Money>& limit);

/// The supplier has said that the rest comes later, or has sent a part and owes the rest.
[[nodiscard]] bool is_on_back_order(const OrderLine& line, const OrderPromise* promise);

/// Which of `pieces` take `arrived` pieces that came for their line: those that have not come yet,
/// earliest need first, needs without a day last, then by position. Returns positions in `pieces`.
[[nodiscard]] std::vector<std::size_t> first_served(const std::vector<OrderPiece>& pieces,
                                                    int arrived);

}  // namespace sparewell::supply
