/// The call list of a recall as a workbook, to be ticked off.
#pragma once

#include "desk/recall_words.hpp"
#include "exchange/list_workbook.hpp"

namespace sparewell::desk {

/// Sheets "Patients", "Shelf" and "Open orders", each with columns to tick. Patients by reference,
/// with names only when asked for.
[[nodiscard]] exchange::ListWorkbook recall_list(const RecallNotice& notice, Names names,
                                                 const std::string& clinic_name);

}  // namespace sparewell::desk
