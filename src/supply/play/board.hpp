/// The stocked items that are played: their order days, lead times and use.
#pragma once

#include <functional>
#include <span>
#include <unordered_map>
#include <vector>

#include "supply/lead_time.hpp"
#include "supply/order_cost.hpp"
#include "supply/play/setting.hpp"

namespace sparewell::supply::play {

/// Days of a play: from `start` until `end`, counted from `counted_from` on; all at their end.
struct Period {
  Date start;
  Date counted_from;
  Date end;
};

/// Pieces asked for, by position of the item in Board::items.
using Requests = std::vector<std::vector<Request>>;

struct BoardItem {
  const Item* item = nullptr;
  const Supplier* supplier = nullptr;  ///< nullptr when the catalogue's is not known
  LeadTime lead;
  std::vector<Date> order_days;  ///< within the period
  MeanUse use;                   ///< that min_max and when_empty go by
  double mean_cost = 0;          ///< of the pieces used, in the smallest unit of its currency
};

/// Refers to the clinic, which must outlive it. Items are in order of their codes, whatever the
/// order of the records.
struct Board {
  const Clinic& clinic;
  Period period;
  std::vector<BoardItem> items;
  std::unordered_map<ItemCode, std::size_t> positions;  ///< in items

  /// Stocked items with a cost; `uses` tells the pieces a day of one that fixed levels go by.
  Board(const Clinic& clinic, const Period& period, const std::function<double(const Item&)>& uses);

  /// The world of one item, its lead times drawn from `seed`. A supplier is early or late for weeks
  /// on end, with all its items, and no order overtakes one placed before it: supply is sequential,
  /// as what covers the demand until one arrival takes for granted (Zipkin, Foundations of Inventory
  /// Management, McGraw-Hill 2000, section 7.4, from memory).
  [[nodiscard]] ItemWorld world(std::size_t item, std::vector<Request> requests,
                                std::uint64_t seed) const;
  /// Our levels for the item on one order day: up to what covers the demand with each of
  /// `services`, then up to the target of least cost at each of them, the next order day being so
  /// many days later.
  [[nodiscard]] std::vector<Levels> levels(std::size_t item, const std::vector<double>& services,
                                           const CycleDemand& demand, int days) const;
  /// Where in its steady stock every rule begins with the item, from 0 to 1.
  [[nodiscard]] double opening_share(std::size_t item, std::uint64_t seed) const;
};

/// Whether the item can be played: kept in stock, and its cost known.
[[nodiscard]] bool can_be_played(const Item& item);

/// What was handed out within the period: for each patient, item and day one request.
[[nodiscard]] Requests handed_out(const Clinic& clinic, const Board& board);

}  // namespace sparewell::supply::play
