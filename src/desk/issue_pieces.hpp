/// Which pieces on the shelf an issue takes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/issue_check.hpp"

namespace sparewell::desk {

struct IssuePieces {
  std::vector<StockLevel> taken;
  std::vector<IssueFinding> findings;  ///< too few, or promised to others
};

/// First expiry, first out, among what may be handed over. A named lot is taken even where it has
/// expired or is held back, so that the checks can say so.
[[nodiscard]] IssuePieces pieces_for(const Clinic& clinic, const IssueQuestion& question);

/// Pieces that are promised to other patients: at that place, "" for all places, and without a day
/// or needed by `until`; whenever they are needed where that is empty.
[[nodiscard]] int promised_to_others(const Clinic& clinic, const ItemCode& item,
                                     const PatientRef& patient, const std::string& place,
                                     std::optional<Date> until = std::nullopt);

/// Pieces in all stores that may be used on `day` and are not promised to other patients.
[[nodiscard]] int free_pieces(const Clinic& clinic, const ItemCode& item, const PatientRef& patient,
                              Date day);

}  // namespace sparewell::desk
