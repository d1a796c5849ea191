/// Which pieces on the shelf an issue takes.
#pragma once

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

}  // namespace sparewell::desk
