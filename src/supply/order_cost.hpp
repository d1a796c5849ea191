/// What stock costs: too much, too little, and ordering it.
#pragma once

#include "supply/pmf.hpp"

namespace sparewell::supply {

/// Newsvendor: the share of periods in which demand should be met, `shortage` / (`shortage` +
/// `leftover`), from the cost of a piece missing and of one left over. Both not negative, one above
/// 0.
[[nodiscard]] double critical_ratio(double shortage, double leftover);

/// E (N - s)+: pieces missing on average when there are `s`; for s < 0 those owed already count.
[[nodiscard]] double expected_short(const Pmf& demand, int s);

/// Newsvendor cost of having `s`: leftover * E (s - N)+ + shortage * E (N - s)+.
[[nodiscard]] double expected_cost(const Pmf& demand, int s, double leftover, double shortage);

/// Demand for an item as one order meets it: until what is ordered now arrives, which nothing can
/// change any more, and until what is ordered on the next order day arrives.
struct CycleDemand {
  Pmf before;
  Pmf until;
};

/// The target whose cost is least when a piece that is asked for and not there costs 1 and a piece
/// on hand until the next order day costs `leftover` > 0. One piece more than s is there
/// for P(until > s) - P(before > s) requests of the cycle that would have been missed, and lies on
/// the shelf while no more than s were asked for: (P(before <= s) + P(until <= s)) / 2 of the
/// cycle, by the trapezoid. What is missing before anything can arrive is no fault of this target,
/// which the newsvendor's critical_ratio leaves out: it is never below this target. Periodic review
/// with a cost for each piece missing (Hadley and Whitin, Analysis of Inventory Systems, 1963, ch.
/// 5, from memory).
[[nodiscard]] int least_cost_target(const CycleDemand& demand, double leftover);

/// Cost a year of ordering `quantity` at a time: line_cost * yearly / quantity + unit_cost * yearly
/// + holding_rate * unit_cost * quantity / 2 (economic order quantity with discounts on all units;
/// "Fundamentals of Supply Chain Theory", 2nd ed. 2019, ch. 3). quantity > 0.
[[nodiscard]] double yearly_cost(double quantity, double yearly, double unit_cost, double line_cost,
                                 double holding_rate);

/// The quantity at which yearly_cost is least for one price: sqrt(2 line_cost yearly /
/// (holding_rate unit_cost)). All above 0.
[[nodiscard]] double economic_quantity(double yearly, double unit_cost, double line_cost,
                                       double holding_rate);

}  // namespace sparewell::supply
