/// What ordering, keeping and missing parts costs the clinic.
#pragma once

#include <optional>

#include "clinic/money.hpp"

namespace sparewell {

struct OrderCosts {
  /// Of keeping a piece for a year, as a share of its price: money tied up, room, ageing. The
  /// default is common practice, no source.
  double holding_rate = 0.20;
  /// Of a piece that is missing when it is needed: the extra visit, the rush order. Where it is
  /// given, it and holding_rate decide how often stock may run out; otherwise the service target
  /// does.
  std::optional<Money> shortage;
  /// Of the work on one more line of an order. Empty: nothing worth counting.
  std::optional<Money> line;

  friend bool operator==(const OrderCosts&, const OrderCosts&) = default;
};

}  // namespace sparewell
