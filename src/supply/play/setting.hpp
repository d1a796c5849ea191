/// The ways of ordering that are played beside one another, and the steps at which each is tried.
#pragma once

#include <vector>

#include "supply/play/item_play.hpp"

namespace sparewell::supply::play {

enum class Policy {
  sparewell,  ///< order up to what covers the forecast demand with a chance, the service target
  by_cost,    ///< up to the target of least cost for every item: see by_cost_leftover
  min_max,    ///< fixed levels, from the use in the past year
  when_empty  ///< one pack when nothing is on hand or on order
};

/// How a level of min_max becomes whole pieces. Clinics order when stock falls to the minimum or
/// when it falls below it: both readings are played.
enum class Rounding {
  down,     ///< ordered below the nearest: items that are seldom used are not kept
  nearest,  ///< ordered at the nearest: every item in use is kept
  up        ///< ordered at the next above: and before the last piece is gone
};

/// One way of ordering for all items.
struct Setting {
  Policy policy = Policy::sparewell;
  /// Of sparewell the service target, of by_cost what stands for one, of min_max the factor on the
  /// mean use; not used otherwise.
  double step = 0;
  Rounding rounding = Rounding::nearest;  ///< of min_max, otherwise not used

  friend bool operator==(const Setting&, const Setting&) = default;
};

/// Ours at each of `services`, then by cost at each of them, then min-max at each of its factors
/// with both roundings, then when_empty.
[[nodiscard]] std::vector<Setting> settings_to_play(const std::vector<double>& services);

/// Service targets that are played, in rising order, `present` among them.
[[nodiscard]] std::vector<double> service_targets(double present);

/// What a piece on hand for so many days costs beside one that is missing, for an item that costs
/// `cost`, when a week of one of mean cost costs 1 - target: each further piece on the shelf is
/// bought where it serves most for its money (see least_cost_target; marginal analysis, as for
/// spares kits: Operations Research 16 (1968) 122-141, abstract seen). Above 0.
[[nodiscard]] double by_cost_leftover(double target, double cost, double mean_cost, int days);

/// Mean use of one item and how long an order leaves it uncovered.
struct MeanUse {
  double per_day = 0;      ///< pieces handed out a day
  double lead_days = 0;    ///< mean
  double review_days = 1;  ///< mean time between order days
};

/// Levels as they are commonly set by hand (common practice, no source): the minimum is `factor`
/// times the mean use from one order day until what is ordered on the next has arrived, the maximum
/// lies above it by the use between order days, or by a pack when that is more. An item without use
/// is not kept.
[[nodiscard]] Levels min_max_levels(const Item& item, const MeanUse& use, double factor,
                                    Rounding rounding);

/// A pack when the position is 0 or less (common practice, no source); an item without use is not
/// kept.
[[nodiscard]] Levels when_empty_levels(const MeanUse& use);

/// Order up to `target`.
[[nodiscard]] Levels up_to(int target);

/// Mean days between order days.
[[nodiscard]] double review_days(const OrderDays& order_days);

}  // namespace sparewell::supply::play
