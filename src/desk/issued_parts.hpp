/// What was handed to a patient, and which sheets there are of it: for choosing by number.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/unit_ending.hpp"

namespace sparewell::desk {

/// Units of one patient that were handed over together and differ in nothing but their copy.
struct IssuedParts {
  std::vector<Unit> units;         ///< one at least
  std::optional<Date> printed_on;  ///< a delivery sheet was written last on that day
  std::optional<Date> signed_on;   ///< the day on the signed sheet
  bool handed_over_here = false;   ///< by this program, not imported
};

/// `units`, of one patient, with their sheets; in the order in which they come.
[[nodiscard]] std::vector<IssuedParts> with_sheets(const store::Snapshot& snapshot,
                                                   const std::vector<Unit>& units);

/// Everything that answers to `choice`, the newest issue first; mistaken issues are left out.
[[nodiscard]] std::vector<IssuedParts> issued_parts(const store::Snapshot& snapshot,
                                                    const UnitChoice& choice);

/// Of these, those without a signed sheet: what was handed over by this program or, when an item is
/// named, what was imported too.
[[nodiscard]] std::vector<IssuedParts> unsigned_parts(const store::Snapshot& snapshot,
                                                      const UnitChoice& choice);

/// Those with these numbers, counted from 1; all where none is given. Refuses a number that there
/// is not, and an empty list.
[[nodiscard]] Expected<std::vector<IssuedParts>> chosen_parts(const std::vector<IssuedParts>& parts,
                                                              const std::vector<int>& numbers,
                                                              const std::string& patient);

/// "left L-1 (lot A, serial 7), issued 20 Nov 2026, 2 pieces, sheet written 20 Nov 2026".
[[nodiscard]] std::string issued_words(const IssuedParts& parts);

}  // namespace sparewell::desk
