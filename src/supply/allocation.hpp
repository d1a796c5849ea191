/// Where pieces that are there should lie: the places' shares of one item.
#pragma once

#include <vector>

#include "supply/pmf.hpp"

namespace sparewell::supply {

/// One item at one place.
struct PlaceBalance {
  int position = 0;  ///< usable there and on the way there, less promised; may be below 0
  int movable = 0;   ///< may leave the place, 0 or more
  const Pmf* demand = nullptr;
};

/// Pieces by which the position of each place is to change; they sum to 0.
///
/// Least is the number of pieces expected to be missing, the sum of E (N - position)+ over the
/// places, plus `least_gain` for each piece moved. Pieces are moved one by one from where one less
/// matters least to where one more matters most, while the expected missing pieces fall by
/// `least_gain` > 0 or more: P(N > position) there less P(N >= position) here. Each term is convex
/// in the position of its place, so that no other way of sharing does better (marginal analysis;
/// the argument of METRIC, Operations Research 16 (1968) 122-141), and no place both gives and
/// receives. Of places that are alike the first is taken.
[[nodiscard]] std::vector<int> best_changes(const std::vector<PlaceBalance>& places,
                                            double least_gain);

}  // namespace sparewell::supply
