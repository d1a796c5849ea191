/// Counts of the shelf.
#pragma once

#include <vector>

#include "store/sqlite/session.hpp"

namespace sparewell::store::sqlite {

/// Appends one count, and its lot when the lot is new.
void append_count(WriteSession& session, const ShelfCountRecord& count);
[[nodiscard]] std::vector<ShelfCountRecord> all_counts(Session& session);

}  // namespace sparewell::store::sqlite
