/// Turns a proposal into numbered orders and their workbooks.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "desk/assessment.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

struct WrittenOrder {
  std::string number;
  SupplierName supplier;
  std::filesystem::path file;
  int lines = 0;
  int pieces = 0;
};

/// Writes one workbook a supplier into `folder` (made when missing) and keeps the orders as drafts.
/// A draft that says the same as an earlier one keeps its number; one that says something else
/// takes a new number and the earlier draft is cancelled. Drafts do not count as on order.
/// Throws store::StoreFailure, or std::runtime_error when a file cannot be written.
[[nodiscard]] std::vector<WrittenOrder> write_orders(store::Store& store,
                                                     const Assessment& assessment,
                                                     const std::filesystem::path& folder,
                                                     const store::Author& author);

/// Marks draft orders as sent to the supplier: from then on they count as on order.
/// Returns how many order lines changed.
int mark_as_sent(store::Store& store, const std::vector<std::string>& order_numbers,
                 const store::Author& author);

}  // namespace sparewell::desk
