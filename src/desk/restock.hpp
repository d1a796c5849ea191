/// Pieces that should go from one branch to another today, and sending them.
#pragma once

#include <string>
#include <vector>

#include "desk/assessment.hpp"
#include "desk/stock_booking.hpp"
#include "supply/restock.hpp"

namespace sparewell::desk {

struct RestockPlan {
  /// How long what is sent to a place is on its way.
  struct Way {
    std::string place;
    int days = 0;
    int seen = 0;  ///< transfers that it was learned from; 0: assumed
  };

  int days_between = 0;   ///< from one round of moves to the next
  std::vector<Way> ways;  ///< every store, the main place first; empty without a plan
  std::vector<supply::RestockMove> moves;

  /// The clinic has more than one store.
  [[nodiscard]] bool several_places() const { return ways.size() > 1; }
};

/// What supply::restock proposes for the day of the assessment. `ledger` in the order of writing
/// says how long transfers take. Needs that are held back (held_needs.hpp) do not count.
[[nodiscard]] RestockPlan plan_restock(const Assessment& assessment,
                                       const std::vector<StockMovement>& ledger,
                                       int days_between = supply::usual_days_between_moves);
/// The ledger as plan_restock wants it: none of it where the clinic has one store.
[[nodiscard]] std::vector<StockMovement> ledger_for_restock(const store::Snapshot& snapshot,
                                                            const Clinic& clinic);

/// Sends the moves: each lot is a transfer that lies in transit until it arrives. A refusal, for
/// example because pieces have gone meanwhile, is of all of them: commit nothing then.
[[nodiscard]] Expected<Booked> book_restock(store::UnitOfWork& work,
                                            const std::vector<supply::RestockMove>& moves,
                                            Date today);

}  // namespace sparewell::desk
