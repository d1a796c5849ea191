/// Money in stock against fill rate, and what one way of ordering saves at the fill rate of
/// another.
#pragma once

#include <optional>
#include <vector>

#include "supply/play/run.hpp"

namespace sparewell::supply::play {

/// The best that a way of ordering reaches: of the points those for which no other has as good a
/// fill rate for less money; in rising order of both.
[[nodiscard]] std::vector<Outcome> frontier(std::vector<Outcome> points);

/// Money in stock at the fill rate, straight between the points of a frontier. Empty below the
/// first point and above the last.
[[nodiscard]] std::optional<double> stock_at(const std::vector<Outcome>& frontier,
                                             double fill_rate);

/// What ours needs at its fill rate, and what the peer needs at the same one.
struct Saving {
  double fill_rate = 0;
  double ours = 0;  ///< mean money in stock, in the smallest unit of the currency
  double peer = 0;
  /// 1 - ours / peer, with the 5 % and 95 % points of resampled plays; below 0 when ours needs
  /// more.
  double share = 0;
  std::optional<double> low;
  std::optional<double> high;
};

/// Runs by setting, then world.
using RunsBySetting = std::vector<std::vector<const Run*>>;

/// Min-max on its frontier against `ours`, sparewell or by_cost, at the fill rate that sparewell
/// has at the service target; by_cost on its frontier too. What is left open is told by drawing
/// worlds anew with replacement, or items where there is but one world (the bootstrap), 400 times.
/// Empty when the settings do not reach the fill rate.
[[nodiscard]] std::optional<Saving> saving_against_min_max(const Board& board, const Group& group,
                                                           const std::vector<Setting>& settings,
                                                           const RunsBySetting& runs,
                                                           double service, Policy ours);

}  // namespace sparewell::supply::play
