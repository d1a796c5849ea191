/// Who the clinic buys from, and on which days.
#pragma once

#include <optional>
#include <string>

#include "clinic/date.hpp"
#include "clinic/money.hpp"
#include "clinic/refs.hpp"

namespace sparewell {

/// The days on which orders go to a supplier: weekdays, or every so many days. With neither,
/// any day from Monday to Friday.
struct OrderDays {
  unsigned weekdays = 0;  ///< bit 0 Monday to bit 6 Sunday (ISO 8601 order)
  int every_days = 0;     ///< 0 when weekdays are used

  friend bool operator==(const OrderDays&, const OrderDays&) = default;
};

/// "Mon;Thu", "1;4" (ISO 8601 weekday numbers), or one number above 7 for "every N days".
[[nodiscard]] std::optional<OrderDays> parse_order_days(std::string_view text);
/// The same form that parse_order_days reads; "" for any working day.
[[nodiscard]] std::string order_days_text(const OrderDays& order_days);
[[nodiscard]] bool is_order_day(const OrderDays& order_days, Date day);
/// The first order day after `day`. With every_days = N, that is `day` + N.
[[nodiscard]] Date next_order_day(const OrderDays& order_days, Date day);

struct Supplier {
  SupplierName name;
  OrderDays order_days;
  std::optional<Money> freight;            ///< charged for each order
  std::optional<Money> free_freight_from;  ///< goods value from which freight is free
  Currency currency;
  std::string email;
  std::string account;  ///< the clinic's account number with the supplier

  friend bool operator==(const Supplier&, const Supplier&) = default;
};

}  // namespace sparewell
