/// Orders for the tests of the workbook.
#pragma once

#include <filesystem>
#include <string>

#include "clinic/purchase_order.hpp"

namespace sparewell::exchange::testing {

inline PurchaseOrderLine line(std::string item, int quantity, std::int64_t minor,
                              const std::string& currency = "EUR") {
  PurchaseOrderLine made;
  made.item = {std::move(item)};
  made.supplier_item = "X-100";
  made.description = "Locking liner, soft";
  made.size_label = "28";
  made.quantity = quantity;
  made.unit_cost = Money{minor, Currency{currency}};
  return made;
}

inline PurchaseOrder small_order() {
  PurchaseOrder order;
  order.number = "SW-2026-0001";
  order.supplier.name = {"Example & Sons Supplies"};
  order.supplier.account = "C-77";
  order.clinic_name = "Example Clinic";
  order.ship_to = "1 Example Street\nExampletown";
  order.ordered_on = make_date(2026, 11, 25);
  order.expected_by = make_date(2026, 12, 2);
  order.lines = {line("L-28", 3, 41250), line("P-10", 12, 1999)};
  order.lines[0].for_patients = {{{"P0012"}, Side::left}, {{"P0044"}, Side::left}};
  return order;
}

/// A new, empty folder for one test.
inline std::filesystem::path fresh_folder(const std::string& name) {
  const auto folder = std::filesystem::temp_directory_path() / "sparewell-workbook-test" / name;
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  return folder;
}

}  // namespace sparewell::exchange::testing
