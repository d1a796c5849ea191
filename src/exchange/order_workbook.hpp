/// Writes one purchase order as a workbook that the supplier can take.
#pragma once

#include <filesystem>

#include "clinic/purchase_order.hpp"

namespace sparewell::exchange {

/// A file name for the order: its number and the supplier's name, in letters that every file
/// system takes, ending in ".xlsx".
[[nodiscard]] std::string order_file_name(const PurchaseOrder& order);

/// Writes the workbook beside `file` under a temporary name and then renames it, so that a failed
/// write leaves an older file as it was. Throws std::runtime_error with one sentence when it cannot
/// be written.
void write_order_workbook(const PurchaseOrder& order, const std::filesystem::path& file);

}  // namespace sparewell::exchange
