/// Brings a stock count into the ledger.
#pragma once

#include "desk/import/file_import.hpp"

namespace sparewell::desk {

/// Rows of one lot at one place are summed; the difference to the ledger is recorded as a movement:
/// a receipt when the ledger has nothing for the item yet, else a count correction. Lots that the
/// file does not list are corrected to zero for each item and place it mentions, unless a row of
/// that item was refused or the file itself holds refused rows only. Other stock is left.
void import_stock_count(FileImport& run);

}  // namespace sparewell::desk
