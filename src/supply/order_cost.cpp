#include "supply/order_cost.hpp"

#include <cmath>

namespace sparewell::supply {

double critical_ratio(double shortage, double leftover) {
  return shortage / (shortage + leftover);
}

double expected_short(const Pmf& demand, int s) {
  double sum = 0;
  const auto& mass = demand.mass();
  for (std::size_t n = mass.size(); n-- > 0;) {
    const double missing = static_cast<double>(n) - s;
    if (!(missing > 0)) break;
    sum += missing * mass[n];
  }
  return sum;
}

double expected_cost(const Pmf& demand, int s, double leftover, double shortage) {
  const double missing = expected_short(demand, s);
  return leftover * (s - demand.mean() + missing) + shortage * missing;
}

int least_cost_target(const CycleDemand& demand, double leftover) {
  const int most = static_cast<int>(demand.until.mass().size());
  double before = 0;  // P(before <= s)
  double until = 0;
  double cost = 0;  // less the cost of target 0
  double least = 0;
  int target = 0;
  const auto mass_at = [](const Pmf& pmf, int n) {
    const auto at = static_cast<std::size_t>(n);
    return at < pmf.mass().size() ? pmf.mass()[at] : 0.0;
  };
  // Not every further piece is worth less than the one before, so all targets are looked at.
  for (int s = 0; s < most; ++s) {
    before += mass_at(demand.before, s);
    until += mass_at(demand.until, s);
    cost += leftover * (before + until) / 2 - (before - until);
    if (cost < least) {
      least = cost;
      target = s + 1;
    }
  }
  return target;
}

double yearly_cost(double quantity, double yearly, double unit_cost, double line_cost,
                   double holding_rate) {
  return line_cost * yearly / quantity + unit_cost * yearly +
         holding_rate * unit_cost * quantity / 2;
}

double economic_quantity(double yearly, double unit_cost, double line_cost, double holding_rate) {
  return std::sqrt(2 * line_cost * yearly / (holding_rate * unit_cost));
}

}  // namespace sparewell::supply
