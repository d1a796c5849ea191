/// All items played under one setting, and what comes of it in pieces, patients and money.
#pragma once

#include <cstdint>
#include <vector>

#include "supply/play/board.hpp"

namespace sparewell::supply::play {

/// Targets of ours for each item, setting and order day: by position in Board::items, in
/// Board::levels, in the order days.
using Targets = std::vector<std::vector<std::vector<Levels>>>;

/// Patients' requests and our targets in one world, past or drawn.
struct Scenario {
  Requests requests;
  Targets targets;
  std::uint64_t seed = 0;  ///< of its lead times
};

/// What one setting did in one world: by item, and the orders that it took.
struct Run {
  std::vector<ItemCounts> items;
  int orders = 0;            ///< one for each supplier and day
  std::int64_t freight = 0;  ///< in the smallest unit of the currency
};

/// The items of one currency; money of several is never added.
struct Group {
  Currency currency;
  std::vector<std::size_t> items;  ///< positions in Board::items
};

/// In order of their codes.
[[nodiscard]] std::vector<Group> groups_of(const Board& board);

/// One run for each of `settings`; `services` as the targets were made for. Runs leave items of
/// other groups out; `items` are in the order of Group::items.
[[nodiscard]] std::vector<Run> play_all(const Board& board, const Group& group,
                                        const Scenario& scenario,
                                        const std::vector<Setting>& settings,
                                        const std::vector<double>& services);

/// The counts of a setting over several worlds.
struct Totals {
  Setting setting;
  int worlds = 0;
  std::int64_t pieces = 0;
  std::int64_t served_at_once = 0;
  int patients = 0;      ///< who asked
  int kept_waiting = 0;  ///< of these
  std::int64_t waited_days = 0;
  int longest_wait = 0;
  int rush = 0;
  double stock = 0;          ///< mean money in stock, in the smallest unit of the currency
  std::int64_t expired = 0;  ///< money thrown away, likewise; over all worlds
  int orders = 0;            ///< over all worlds
  std::int64_t freight = 0;  ///< likewise

  /// Part of the pieces that were on hand when asked for; 1 when none were asked for.
  [[nodiscard]] double fill_rate() const;
  /// Days, of patients who were kept waiting; 0 when there were none.
  [[nodiscard]] double mean_wait() const;
};

/// `runs` are of one setting in each world; `weights` say how often each item or world counts.
struct Weights {
  std::vector<double> items;   ///< by position in Group::items; empty: once each
  std::vector<double> worlds;  ///< empty: once each
};

[[nodiscard]] Totals totals_of(const Board& board, const Group& group, const Setting& setting,
                               const std::vector<const Run*>& runs);

/// Fill rate and mean money in stock alone, weighted.
struct Outcome {
  double fill_rate = 1;
  double stock = 0;
};
[[nodiscard]] Outcome outcome_of(const Board& board, const Group& group,
                                 const std::vector<const Run*>& runs, const Weights& weights);

}  // namespace sparewell::supply::play
