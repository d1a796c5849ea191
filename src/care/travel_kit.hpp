/// Which spares to take along so that the suspension lasts.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "supply/pmf.hpp"

namespace sparewell::care {

/// One function of the suspension.
struct SpareNeed {
  supply::Pmf failures;  ///< of all units in use that have the function, while away
  int carried = 0;       ///< units that are along anyway, beside the one that must work
  double cost = 1;       ///< of one more spare, above 0: its price, or 1 to count pieces
  /// Where failed parts can be had again on the way: at least the chance never to be without a
  /// working one, for 0, 1 ... units beside it (care/resupply). Empty: they cannot.
  std::vector<double> resupplied = {};
};

/// The chance that the function never fails for good with so many spares.
[[nodiscard]] double assurance(const SpareNeed& need, int spares);

struct SpareKit {
  std::vector<int> spares;  ///< of each need, in the order given
  double assurance = 0;     ///< that no function fails for good: the product over the needs
  double cost = 0;
  bool reached = false;  ///< the wanted assurance
};

/// The chance that nothing fails with these spares; functions fail independently.
[[nodiscard]] double assurance(std::span<const SpareNeed> needs, std::span<const int> spares);

/// At most so many spares of one function are proposed.
inline constexpr int most_spares = 12;

/// Spares added one by one where they raise the log of the assurance most for their cost, until it
/// is reached or nothing helps any more (marginal analysis, as for redundancy in "Discrete
/// optimization via marginal analysis", Management Science 13 (1966) 210-216, from memory: what is
/// met on the way no other kit of the same cost beats, where the logs are concave). The last spare
/// may go beyond what is needed.
[[nodiscard]] SpareKit kit_by_margins(std::span<const SpareNeed> needs, double wanted);

/// The cheapest kit that reaches the wanted assurance; of those the smallest, and then the surest.
/// Found by going through all kits that cost no more than that of kit_by_margins, which is returned
/// where those are too many to look at.
[[nodiscard]] SpareKit cheapest_kit(std::span<const SpareNeed> needs, double wanted);

}  // namespace sparewell::care
