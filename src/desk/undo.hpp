/// What was done in this run of the program and can be taken back, the newest first.
///
/// Nothing that is recorded is deleted: what is taken back is a further record with the reason
/// "undone", in a unit of work of its own.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "desk/issuing.hpp"
#include "desk/stock_booking.hpp"
#include "desk/unit_ending.hpp"

namespace sparewell::desk {

struct UndoStep {
  std::string what;  ///< "issue of L1 to P-1"
  /// Takes it back. Returns a sentence that says what holds now; a refusal writes nothing.
  std::function<Expected<std::string>(store::Store&, Date today, const std::string& who)> take_back;
};

class UndoList {
 public:
  void did(UndoStep step);
  /// Something was done that stays: it, and what went before it, is not to be taken back by
  /// mistake. `what` is "order SW-2026-0001 placed".
  void did_for_good(std::string what);
  void forget();

  /// Whether asking to undo says or does anything.
  [[nodiscard]] bool anything() const { return !steps_.empty() || !lasting_.empty(); }
  /// Whether the newest thing can be taken back.
  [[nodiscard]] bool can_undo() const { return !steps_.empty(); }
  /// "Undo issue of L1 to P-1", or "Undo" where there is nothing.
  [[nodiscard]] std::string label() const;
  /// Takes the newest step back. A step that is refused stays on the list.
  Expected<std::string> undo(store::Store& store, Date today, const std::string& who);

 private:
  std::vector<UndoStep> steps_;
  std::string lasting_;  ///< done last, and for good; "" for nothing
};

// The inverse of what was just done. Each looks at what holds when it is used, and refuses what has
// been changed since.

/// Pieces go back to where they lay, and bookings that they used up stand again.
[[nodiscard]] UndoStep undo_issue(std::vector<Unit> units);
/// The part is in use again; where it came back, that is reversed in the ledger. Empty for the
/// reversal of a mistaken issue.
[[nodiscard]] std::optional<UndoStep> undo_ending(const UnitEnding& ending, const EndedUnit& ended);
/// Opposite movements. Empty where more than stock was booked, or nothing was moved.
[[nodiscard]] std::optional<UndoStep> undo_movements(const store::Snapshot& snapshot,
                                                     const Booked& booked);

/// What is booked for visits of everyone.
[[nodiscard]] std::vector<Reservation> bookings_now(const store::Snapshot& snapshot);
/// Gives up pieces that were booked between `before` and `after`, and books those again that were
/// given up. Empty where nothing differs.
[[nodiscard]] std::optional<UndoStep> undo_bookings(const std::vector<Reservation>& before,
                                                    const std::vector<Reservation>& after);
/// The newest answer to a finding: the one before it holds again, or the finding is open again.
/// Empty where it was never answered.
[[nodiscard]] std::optional<UndoStep> undo_answer(const store::Snapshot& snapshot,
                                                  const std::string& finding);

}  // namespace sparewell::desk
