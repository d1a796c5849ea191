#include "supply/joint_replenishment.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace sparewell::supply {
namespace {

/// The least m with m (m + 1) >= 2 line_cost / (holding demand interval^2): then one more does not
/// pay.
int best_multiple(const JointItem& item, double interval) {
  const double ratio = 2 * item.line_cost / (item.holding * item.demand * interval * interval);
  return std::max(1, static_cast<int>(std::ceil(std::sqrt(ratio + 0.25) - 0.5 - 1e-12)));
}

/// The best interval for these multiples, and its cost.
JointPlan best_for(double order_cost, const std::vector<JointItem>& items,
                   std::vector<int> multiples) {
  double per_order = order_cost;
  double held = 0;
  for (std::size_t i = 0; i < items.size(); ++i) {
    per_order += items[i].line_cost / multiples[i];
    held += items[i].holding * items[i].demand * multiples[i];
  }
  return {std::sqrt(2 * per_order / held), std::move(multiples), std::sqrt(2 * per_order * held)};
}

std::vector<int> best_multiples(const std::vector<JointItem>& items, double interval) {
  std::vector<int> multiples;
  for (const JointItem& item : items) multiples.push_back(best_multiple(item, interval));
  return multiples;
}

}  // namespace

JointPlan joint_replenishment(double order_cost, const std::vector<JointItem>& items) {
  double line_costs = 0;
  double held = 0;
  for (const JointItem& item : items) {
    line_costs += item.line_cost;
    held += item.holding * item.demand;
  }
  // The best interval lies between these: below, even the order cost alone is not spread enough
  // (its share of the cost would exceed that of the best plan with all multiples 1); above, it is
  // too long for every multiple being 1.
  const double longest = std::sqrt(2 * (order_cost + line_costs) / held);
  const double most_cost = std::sqrt(2 * (order_cost + line_costs) * held);
  const double shortest = order_cost / most_cost;
  std::set<double> changes{longest};
  for (const JointItem& item : items) {
    for (int m = 1;; ++m) {
      const double at =
          std::sqrt(2 * item.line_cost / (item.holding * item.demand * m * (m + 1.0)));
      if (!(at > shortest)) break;
      if (at < longest) changes.insert(at);
    }
  }
  JointPlan best = best_for(order_cost, items, std::vector<int>(items.size(), 1));
  double before = shortest;
  for (const double change : changes) {
    // Between two changes the multiples stay as they are.
    const JointPlan made =
        best_for(order_cost, items, best_multiples(items, (before + change) / 2));
    if (made.cost < best.cost) best = made;
    before = change;
  }
  return best;
}

}  // namespace sparewell::supply
