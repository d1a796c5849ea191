/// One item played day by day under a rule of ordering.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::supply::play {

/// Someone who arrives within so many days is not kept waiting long: a piece that finds nothing on
/// hand and nothing arriving within them that is not promised already needs a rush order.
inline constexpr int rush_days = 2;

/// What one patient asks for on one day.
struct Request {
  Date day;
  int pieces = 1;

  friend bool operator==(const Request&, const Request&) = default;
};

/// What every rule meets alike: the world of one item. Days are whole; on each, in this order, what
/// was ordered arrives and serves those who wait, lots past their use-by date are thrown away,
/// patients ask, and on an order day an order is placed.
struct ItemWorld {
  const Item* item = nullptr;
  Date start;
  Date counted_from;              ///< days before it are played and not counted
  Date end;                       ///< the last day
  std::vector<Request> requests;  ///< in order of day
  std::vector<Date> order_days;   ///< in order
  std::vector<int> lead_days;  ///< of what is ordered on each of them; 0 arrives the same evening
};

/// Order when the position (on hand, on order, less what is waited for) is no more than `order_at`,
/// up to `order_to`, in whole packs and no less than the minimum order.
struct Levels {
  int order_at = -1;
  int order_to = 0;

  friend bool operator==(const Levels&, const Levels&) = default;
};

struct ItemRule {
  std::span<const Levels> levels;  ///< one for every order day, or one for all
  int opening = 0;                 ///< pieces on hand at the start, all of them fresh
  /// Stock whose use-by date lies within so many days does not count; empty: all counts.
  std::optional<int> counts_lasting;
};

/// An order placed on a counted day.
struct PlacedOrder {
  Date day;
  int quantity = 0;
};

struct ItemCounts {
  int pieces = 0;                ///< asked for
  int served_at_once = 0;        ///< of these
  int requests = 0;              ///< patients who asked
  int kept_waiting = 0;          ///< of these, not served in full at once
  std::int64_t waited_days = 0;  ///< by those, each until the last piece came or the play ended
  int longest_wait = 0;
  int rush = 0;                   ///< requests that needed a rush order (see rush_days)
  std::int64_t stock_days = 0;    ///< pieces on hand, summed over the ends of days
  std::int64_t waiting_days = 0;  ///< pieces waited for, likewise
  int expired = 0;                ///< pieces thrown away
  int days = 0;                   ///< counted
};

/// Plays the item. With `placed`, adds the counted orders to it. Throws std::invalid_argument when
/// the levels or lead times do not match the order days.
[[nodiscard]] ItemCounts play_item(const ItemWorld& world, const ItemRule& rule,
                                   std::vector<PlacedOrder>* placed = nullptr);

/// A stock that such a rule leaves on a day taken at random, for `share` from 0 to 1: orders of q
/// pieces leave the position evenly spread over order_at + 1 ... order_at + q when patients ask for
/// one piece at a time (a standard result of renewal theory). Nothing below 0.
[[nodiscard]] int steady_stock(const Item& item, const Levels& levels, double share);

}  // namespace sparewell::supply::play
