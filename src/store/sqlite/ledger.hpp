/// The stock ledger.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "store/sqlite/session.hpp"

namespace sparewell::store::sqlite {

/// Appends one movement, and its lot when the lot is new. Throws StoreFailure{constraint} for a
/// quantity of zero and for one that would take the stock below zero.
void append_movement(WriteSession& session, const StockMovement& movement);
[[nodiscard]] std::vector<StockMovement> all_movements(Session& session);
/// Those of pieces of the item with this serial number.
[[nodiscard]] std::vector<StockMovement> movements_of_serial(Session& session, const ItemCode& item,
                                                             const std::string& serial);
/// Those of the item's lots with this number.
[[nodiscard]] std::vector<StockMovement> movements_of_lot(Session& session, const ItemCode& item,
                                                          const std::string& lot);
[[nodiscard]] std::vector<StockMovement> movements_of_kind(Session& session, MovementKind kind);
/// The row of a lot; nothing when it is not stored.
[[nodiscard]] std::optional<std::int64_t> find_lot(Session& session, const Lot& lot);
/// Ordered by lot (in the order in which lots were first seen) and place.
[[nodiscard]] std::vector<StockLevel> current_shelf(Session& session);
/// The same of one item, summed from its own lots only; empty for an unknown item.
[[nodiscard]] std::vector<StockLevel> shelf_of_item(Session& session, const ItemCode& item);

}  // namespace sparewell::store::sqlite
