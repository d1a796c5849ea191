/// Which pieces to move between the places of a clinic, and why.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "supply/place_demand.hpp"
#include "supply/proposal.hpp"
#include "supply/transit_days.hpp"

namespace sparewell::supply {

/// A piece is moved where the clinic then expects so much less of a piece to be missing (our
/// choice): less is not worth the parcel.
inline constexpr double least_move_gain = 0.02;
/// Days from one round of moves to the next, where nothing else is said (our choice).
inline constexpr int usual_days_between_moves = 7;

struct RestockQuestion {
  int days_between = usual_days_between_moves;  ///< 1 or more
  TransitDays transit = {};
  double least_gain = least_move_gain;  ///< above 0
};

/// One of the two places of a move, until what is sent there with the next round would arrive.
struct PlaceOutlook {
  std::string place;
  Date until;
  int on_hand = 0;                 ///< usable
  int in_transit = 0;              ///< on the way there
  int reserved = 0;                ///< promised there
  double expected = 0;             ///< pieces needed by its patients
  double chance_short_before = 0;  ///< that more are needed than there are, without any move
  double chance_short_after = 0;   ///< with all moves of the item

  [[nodiscard]] int position() const { return on_hand + in_transit - reserved; }
};

/// Pieces of one item that should go from one store to another.
struct RestockMove {
  ItemCode item;
  int quantity = 0;
  std::vector<StockLevel> lots;  ///< what to send; first expiry, first out
  int transit_days = 0;
  PlaceOutlook from;
  PlaceOutlook to;
  /// Who belongs to `to` and is expected to need it, most likely first; at most most_named_needs.
  std::vector<ExpectedNeed> needs;
  int more_needs = 0;
  double for_new_patients = 0;  ///< of to.expected
  double not_for_wear = 0;      ///< of to.expected: for losses, recalls and changes of item
  /// Pieces of the item expected to be missing, over all places, without and with its moves.
  double missing_before = 0;
  double missing_after = 0;
};

/// The moves, by the place they leave, the place they go to, and item code.
///
/// For each stocked item, the pieces that are usable at each store and on their way there, less
/// what is promised there and due by then, are set against the demand there until what is sent with
/// the next round would arrive: today + days_between + the transit days to that place.
/// allocation.hpp says which change is best. Pieces in quarantine, on loan, at a supplier or on
/// their way never move, nor those that are promised where they lie; lots whose use-by date falls
/// within the interval neither count nor move. What is on order does not count: orders are
/// delivered to the main place and shared out from there once they have come.
[[nodiscard]] std::vector<RestockMove> restock(const Clinic& clinic, const PlaceDemand& demand,
                                               const RestockQuestion& question);

}  // namespace sparewell::supply
