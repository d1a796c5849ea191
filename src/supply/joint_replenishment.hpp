/// How often to order from one supplier, when each order costs freight and each line work.
#pragma once

#include <vector>

namespace sparewell::supply {

/// One item of a supplier; costs in one currency, per unit of time.
struct JointItem {
  double line_cost = 0;  ///< of one more line, not negative
  double holding = 0;    ///< of keeping one piece for a unit of time, above 0
  double demand = 0;     ///< pieces a unit of time, above 0
};

struct JointPlan {
  double interval = 0;         ///< between orders
  std::vector<int> multiples;  ///< the item is on every so many-th order
  double cost = 0;             ///< of ordering and keeping, a unit of time
};

/// The joint replenishment problem: least cost per unit of time of ordering at multiples of one
/// interval, each order costing `order_cost` > 0 and each line on it its own. Found by trying the
/// intervals at which a multiple changes (Goyal's enumeration, Operational Research Quarterly 25
/// (1974) 649-656, from memory); every interval between those has a closed form. `items` not empty.
[[nodiscard]] JointPlan joint_replenishment(double order_cost, const std::vector<JointItem>& items);

}  // namespace sparewell::supply
