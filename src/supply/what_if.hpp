/// What today's orders would be, and what they would risk, if something were decided otherwise.
#pragma once

#include <map>
#include <vector>

#include "clinic/clinic.hpp"
#include "supply/order_outlook.hpp"
#include "supply/order_policy.hpp"
#include "supply/proposal.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::supply {

/// A stocked item that may run out.
struct ItemAtRisk {
  ItemCode item;
  double chance_short = 0;  ///< before what is ordered after this order could arrive
  /// The first day by whose end the chance that it has run out reaches one in ten, if nothing comes
  /// but what is on order; empty when that is more than a year ahead.
  std::optional<Date> runs_out;
  /// Items of other suppliers that the same patients might wear, by the same kind, attachment,
  /// material and thread and an overlapping size; a clinician decides.
  std::vector<ItemCode> alternatives;
};

/// At most so many items at risk are told, the greatest chances first.
inline constexpr std::size_t most_items_at_risk = 10;

struct Outcome {
  int lines = 0;
  int pieces = 0;
  std::map<Currency, std::int64_t> goods;    ///< value of the lines with a price
  std::map<Currency, std::int64_t> freight;  ///< of the orders that do not reach free freight
  int without_price = 0;                     ///< lines that the value leaves out
  /// Pieces of stocked items missing on average just before this order arrives.
  double short_before = 0;
  /// The same just before the order after it arrives, when this one has.
  double short_after = 0;
  /// Of patients who need an item that is ordered for them: parts worn out before this order
  /// arrives, on average, of those that should be ordered by now or are.
  double patients_late = 0;
  int items_below_target = 0;  ///< that may run out more often than wanted
  std::vector<ItemAtRisk> at_risk;
};

/// Pure. Throws as propose does.
[[nodiscard]] Outcome what_if(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                              Date today, const OrderPolicy& policy);

/// The orders of a policy with what they would risk.
struct DecidedOrders {
  Proposal proposal;
  Outcome outcome;
};

/// The same as propose and what_if under this policy; quicker each time after the first, because
/// what does not depend on the policy stays in `outlook`. `policy` must be of its day, otherwise
/// throws std::invalid_argument.
[[nodiscard]] DecidedOrders decide(OrderOutlook& outlook, const OrderPolicy& policy);

/// Items that could serve instead of this one, of another supplier.
[[nodiscard]] std::vector<ItemCode> alternatives_to(const Item& item, const Clinic& clinic);

}  // namespace sparewell::supply
