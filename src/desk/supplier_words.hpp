/// How a supplier keeps the days that it quotes, in words.
#pragma once

#include <string>

#include "supply/supplier_record.hpp"

namespace sparewell::desk {

/// "late", "as quoted, or nearly", "too few to tell", "nothing received".
[[nodiscard]] std::string supplier_standing(const supply::SupplierRecord& record);

/// "late: 12 days from order to receipt against 9 quoted (40 lines in two years, 24 late, nine in
/// ten at most 8 days). 3 lines open, 1 overdue."
[[nodiscard]] std::string supplier_words(const supply::SupplierRecord& record);

}  // namespace sparewell::desk
