/// The cells of a workbook's sheet.
#pragma once

#include "exchange/sheet/sheet_table.hpp"
#include "exchange/sheet/workbook_parts.hpp"

namespace sparewell::exchange {

/// Refuses a formula without a stored value, naming its cell; a reference to a text that is not
/// there; cells beyond what a sheet can have; more cells than the limit.
[[nodiscard]] Expected<SheetTable> read_cells(const pugi::xml_document& sheet,
                                              const WorkbookParts& parts, const std::string& name,
                                              const SheetLimits& limits);

}  // namespace sparewell::exchange
