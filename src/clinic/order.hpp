/// Order lines at suppliers, and the lines of their invoices.
#pragma once

#include <optional>
#include <string>

#include "clinic/date.hpp"
#include "clinic/money.hpp"
#include "clinic/refs.hpp"
#include "clinic/words.hpp"

namespace sparewell {

/// A draft is proposed and written but not sent; only placed lines count as on order.
enum class OrderState { draft, placed, cancelled };
template <>
std::span<const std::string_view> words<OrderState>();

struct OrderLine {
  SupplierName supplier;
  std::string order_ref;
  ItemCode item;
  Date ordered_on;
  int quantity = 0;
  std::optional<Money> unit_cost;
  std::optional<Date> received_on;  ///< the last receipt
  int received_quantity = 0;
  OrderState state = OrderState::placed;
  int copy = 1;  ///< tells apart lines of one order for the same item

  /// Pieces still to come: back-orders count as on order.
  [[nodiscard]] int outstanding() const {
    if (state != OrderState::placed || received_quantity >= quantity) return 0;
    return quantity - received_quantity;
  }
  friend bool operator==(const OrderLine&, const OrderLine&) = default;
};

struct InvoiceLine {
  SupplierName supplier;
  std::string invoice_ref;
  std::string order_ref;
  ItemCode item;
  int quantity = 0;
  std::optional<Money> unit_cost;
  std::optional<Date> invoiced_on;
  int copy = 1;  ///< tells apart lines of one invoice that are alike
  /// That the invoice charges, written on one of its lines; amounts on several lines add up.
  std::optional<Money> freight = {};

  friend bool operator==(const InvoiceLine&, const InvoiceLine&) = default;
};

}  // namespace sparewell
