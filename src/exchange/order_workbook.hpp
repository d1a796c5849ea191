/// Writes one purchase order as a workbook that the supplier can take.
#pragma once

#include <filesystem>
#include <string>

#include "clinic/purchase_order.hpp"

namespace sparewell::exchange {

/// A file name for the order: its number and the supplier's name, in letters that every file
/// system takes, ending in ".xlsx"; a revision with its number. An order without a number is named
/// "not-ordered".
[[nodiscard]] std::string order_file_name(const PurchaseOrder& order);

/// Writes the workbook beside `file` under a temporary name and then renames it, so that a failed
/// write leaves an older file as it was. Throws std::runtime_error with one sentence when it cannot
/// be written.
///
/// One sheet: what, when, from whom and where to, then the lines, then a total for each currency.
/// Costs, quantities and dates are real numbers and dates; totals are formulas with their values
/// stored beside them. Text is always text, whatever it begins with. Lines without a known cost
/// have empty cost cells and are said to be missing in the total. An order without a number is
/// titled "Not ordered" and says that it is no order.
void write_order_workbook(const PurchaseOrder& order, const std::filesystem::path& file);

}  // namespace sparewell::exchange
