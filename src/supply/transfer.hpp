/// Stock that goes from one place of the clinic to another.
#pragma once

#include <optional>

#include "supply/stock_move.hpp"

namespace sparewell::supply {

enum class Travel {
  sent,    ///< leaves now and lies in transit until it arrives
  at_once  ///< is carried over and there
};

/// From a store to a store. Refuses what lies in quarantine, in transit, on loan or at a supplier.
[[nodiscard]] Decided<StockMove> transfer(const StockView& view, const Pieces& wanted,
                                          const std::string& to, Travel travel, Date on,
                                          const std::string& reason);

/// What came to a place of what was sent there.
struct Arrival {
  ItemCode item;
  std::optional<std::string> lot;  ///< empty: the only lot on the way
  std::optional<Date> use_by;
  std::string to;
  std::optional<int> quantity;  ///< pieces that came, 0 or more; empty: all of them
  /// The rest will not come: it is written off as lost. Otherwise it stays in transit.
  bool rest_is_lost = false;
  std::string reason;  ///< why fewer or more came than were sent; needed to book a difference
};

struct ArrivalMove {
  StockMove move;
  int arrived = 0;    ///< of the pieces sent
  int extra = 0;      ///< came beyond what was sent, booked as counted
  int lost = 0;       ///< written off
  int still_out = 0;  ///< stay in transit
};

/// Refuses when nothing of the item is on its way there, and a difference without a reason.
[[nodiscard]] Decided<ArrivalMove> arrive(const StockView& view, const Arrival& arrival, Date on);

}  // namespace sparewell::supply
