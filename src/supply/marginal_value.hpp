/// The best use of a limited sum: piece by piece where it lowers shortages most for its money.
#pragma once

#include <vector>

#include "supply/pmf.hpp"

namespace sparewell::supply {

/// What may be bought of one thing.
struct Purchase {
  const Pmf* demand = nullptr;  ///< until it could next be bought and have arrived
  int position = 0;             ///< there and coming without it
  double unit_cost = 0;         ///< above 0
  int first = 1;                ///< pieces of the smallest purchase
  int step = 1;                 ///< pieces of each further one
  int most = 0;                 ///< pieces wanted; first plus whole steps, or 0
};

/// Pieces bought of each, in the order given.
struct BoughtPieces {
  std::vector<int> pieces;
  std::vector<std::size_t> order;  ///< of the single purchases, by position in the list
  double spent = 0;
};

/// Marginal analysis: the next purchase is that which lowers the expected number of missing pieces
/// most for its money, until nothing wanted fits into `budget`. Expected shortages are convex in
/// the stock, so for single pieces no other way of spending the same sum does better (the argument
/// of METRIC, Operations Research 16 (1968) 122-141).
[[nodiscard]] BoughtPieces spend(double budget, const std::vector<Purchase>& purchases);

}  // namespace sparewell::supply
