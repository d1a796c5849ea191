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

double yearly_cost(double quantity, double yearly, double unit_cost, double line_cost,
                   double holding_rate) {
  return line_cost * yearly / quantity + unit_cost * yearly +
         holding_rate * unit_cost * quantity / 2;
}

double economic_quantity(double yearly, double unit_cost, double line_cost, double holding_rate) {
  return std::sqrt(2 * line_cost * yearly / (holding_rate * unit_cost));
}

}  // namespace sparewell::supply
