/// A part comes back or ends: recorded on the unit, and in the ledger when it comes back.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/refusal.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

/// Which unit is meant; empty fields leave it open.
struct UnitChoice {
  std::string patient;
  std::optional<Side> side;
  std::string item;
  std::string lot;
  std::string serial;
  std::optional<Date> issued_on = {};

  [[nodiscard]] bool answers(const Unit& unit) const;
};

struct UnitEnding {
  UnitChoice unit;
  EndReason reason = EndReason::other;
  Date on;
  bool back_to_shelf = false;  ///< it is in the clinic's hands again
  bool unopened = false;       ///< in its sealed package: only then may it be handed out again
  /// It was never meant to be issued: the movement is reversed where it lay, and the unit ends as
  /// returned on the day of its issue; a booking that it used up stands again. `reason` and `on`
  /// are not used.
  bool mistake = false;
};

struct EndedUnit {
  Unit unit;                              ///< as recorded now
  std::optional<StockMovement> movement;  ///< when it came back
};

/// One sentence to the person who takes a part back.
[[nodiscard]] std::string hygiene_words();

/// Writes both in one unit of work. A part that was opened goes to quarantine and not to the shelf
/// (common practice, no source); so does one taken back for a recall. Refuses with one sentence:
/// no such unit in use, several that differ, a day before the issue or after `today`, and what
/// contradicts itself. Throws store::StoreFailure.
[[nodiscard]] Expected<EndedUnit> end_unit(store::Store& store, const UnitEnding& ending,
                                           Date today, const std::string& who);

}  // namespace sparewell::desk
