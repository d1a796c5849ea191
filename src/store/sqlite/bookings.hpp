/// The ledger by units of work, and which of them were taken back.
#pragma once

#include <optional>
#include <vector>

#include "store/sqlite/session.hpp"

namespace sparewell::store::sqlite {

/// Those that moved the item, newest first.
[[nodiscard]] std::vector<Booking> newest_bookings(Session& session, const ItemCode& item,
                                                   int most);
[[nodiscard]] std::optional<Booking> find_booking(Session& session, RowId id);
/// Throws StoreFailure{not_found} when no unit of work with this number moved stock.
void note_reversal(WriteSession& session, RowId booking);

}  // namespace sparewell::store::sqlite
