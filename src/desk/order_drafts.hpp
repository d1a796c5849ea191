/// Keeps proposed orders in the store as numbered drafts.
#pragma once

#include <string>
#include <vector>

#include "store/port.hpp"
#include "supply/proposal.hpp"

namespace sparewell::desk {

/// What is proposed for one supplier.
struct SupplierProposal {
  SupplierName supplier;
  std::vector<const supply::ProposalLine*> lines;  ///< one an item
};

/// The day by which an order of `today` for these lines should have come.
[[nodiscard]] Date expected_by(const SupplierProposal& proposal, Date today);

/// Stores each proposal, with the patients that its pieces are for, as a draft of `today` in one
/// transaction and returns their order numbers, in the same order. A supplier's draft with the same
/// items, quantities and costs keeps its number; otherwise a new number is taken. Other drafts of
/// these suppliers are cancelled. Throws store::StoreFailure, and then nothing is stored.
[[nodiscard]] std::vector<std::string> keep_as_drafts(
    store::Store& store, const std::vector<SupplierProposal>& proposals, Date today,
    const store::Author& author);

}  // namespace sparewell::desk
