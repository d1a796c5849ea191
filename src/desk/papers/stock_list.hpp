/// The stock list: what lies where, until when it may be used, what it is worth.
#pragma once

#include "clinic/clinic.hpp"
#include "exchange/list_workbook.hpp"

namespace sparewell::desk {

/// By place, item, lot and use-by date, with the value at the catalogue's cost and a total for each
/// currency. Parts that may not be handed out, or not for long, say so in words. Names no patient.
[[nodiscard]] exchange::ListWorkbook stock_list(const Clinic& clinic, Date today);

}  // namespace sparewell::desk
