/// Today's lines within a limited sum.
#pragma once

#include <optional>
#include <vector>

#include "clinic/clinic.hpp"
#include "supply/proposal.hpp"

namespace sparewell::supply {

struct WantedLine {
  ProposalLine line;
  /// Until what is ordered on the next order day has arrived; empty for a line that is ordered for
  /// patients.
  std::optional<Pmf> needed;
};

/// All lines when there is no budget. Otherwise the quantities of those in its currency are cut
/// down, in whole packs and never below the minimum order, to what marginal_value.hpp buys with it:
/// each piece counts by how much it lowers the expected number of pieces missing. What is promised
/// to a patient counts as certain to be needed. A line of which nothing can be bought is held back.
/// `wanted` in the order that the proposal shall have.
[[nodiscard]] Proposal within_budget(std::vector<WantedLine> wanted, const ClinicIndex& index,
                                     const std::optional<Money>& budget);

}  // namespace sparewell::supply
