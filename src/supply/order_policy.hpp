/// What the clinic decides about its orders, beside what its records say.
#pragma once

#include <optional>
#include <set>

#include "clinic/clinic.hpp"

namespace sparewell::supply {

struct OrderPolicy {
  double service_target = 0.95;  ///< wanted chance of not running out, between 0 and 1
  OrderCosts costs;
  /// The most that the goods of today's orders may cost; lines in other currencies are not limited.
  std::optional<Money> budget;
  /// The day on which the orders are foreseen to be written; empty, or before today: today.
  std::optional<Date> order_on;
  /// Nothing can be ordered from these.
  std::set<SupplierName> without;
};

/// The policy of the clinic's settings, without a budget.
[[nodiscard]] OrderPolicy policy_of(const ClinicSettings& settings);

/// The chance with which the stock of an item should last from one order to the next: the
/// newsvendor's critical ratio where the clinic gave the cost of a missing piece in the currency of
/// the item's price, a left-over piece costing what it costs to keep it until the next order day;
/// otherwise the service target.
struct WantedChance {
  double chance = 0;
  /// Where costs decide: what a left-over piece costs beside a missing one. See least_cost_target,
  /// which never asks for more than `chance` does.
  std::optional<double> leftover;
};
[[nodiscard]] WantedChance wanted_chance(const OrderPolicy& policy, const Item& item,
                                         int days_until_next_order);

}  // namespace sparewell::supply
