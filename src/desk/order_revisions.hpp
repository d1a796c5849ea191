/// What was sent to a supplier, kept as it was: each placing and each amendment is a revision.
#pragma once

#include <filesystem>
#include <vector>

#include "clinic/purchase_order.hpp"
#include "desk/stored_order.hpp"

namespace sparewell::desk {

/// A revision with its lines.
struct KeptRevision {
  OrderRevision head;
  std::vector<OrderRevisionLine> lines;
};

/// Whom a piece is for, as a revision keeps it ("P-7 left"), in the language of the program.
[[nodiscard]] std::string shown_piece(const std::string& text);

/// Keeps the order as it now stands under the number of its header. `why` is kept as it is given.
void keep_revision(store::UnitOfWork& work, const StoredOrder& stored, Date today,
                   const std::string& who, const std::string& why);

/// An order that was placed before its revisions were kept gets the one that it was sent as.
void keep_first_revision(store::UnitOfWork& work, StoredOrder& stored, Date today);
/// Keeps the order as it now stands under the next number.
void keep_next_revision(store::UnitOfWork& work, StoredOrder& stored, Date today,
                        const std::string& who, const std::string& why);

/// The oldest first; none for an order that was imported, or is still a draft.
[[nodiscard]] std::vector<KeptRevision> revisions_of(const store::Snapshot& snapshot,
                                                     const supply::Order& order);

/// The revision as the order that its workbook shows.
[[nodiscard]] PurchaseOrder purchase_order_of(const KeptRevision& revision);

struct ReprintedOrder {
  int revision = 0;
  std::filesystem::path file;
};

/// Writes the workbook of a revision again, marked with its number; 0 is the one in force. Refuses
/// a revision that is not kept, and one without lines: a cancelled order is not ordered again.
/// Throws std::runtime_error when the file cannot be written.
[[nodiscard]] Expected<ReprintedOrder> reprint_order(const store::Snapshot& snapshot,
                                                     const OrderName& name, int revision,
                                                     const std::filesystem::path& folder);

}  // namespace sparewell::desk
