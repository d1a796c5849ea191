/// Small books of suppliers for the tests of this folder.
#pragma once

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "billing/supplier_match.hpp"

namespace sparewell::billing::testing {

inline const Date today = make_date(2026, 11, 25);
inline const Currency euro{"EUR"};

inline Money cents(std::int64_t minor) {
  return {minor, euro};
}

inline Item item_made(std::string code, std::int64_t cost = 10000) {
  Item item;
  item.code = {std::move(code)};
  item.supplier = {"Example Supplies"};
  item.unit_cost = cents(cost);
  item.currency = euro;
  return item;
}

/// One supplier and the item L1 at 100.00.
inline Clinic books_made() {
  Clinic clinic;
  Supplier supplier;
  supplier.name = {"Example Supplies"};
  supplier.currency = euro;
  clinic.suppliers.push_back(supplier);
  clinic.items.push_back(item_made("L1"));
  return clinic;
}

/// Ordered `days_ago` and received ten days later as a whole.
inline OrderLine& add_order(Clinic& clinic, std::string reference, int quantity, int days_ago,
                            std::int64_t cost = 10000) {
  OrderLine line;
  line.supplier = {"Example Supplies"};
  line.order_ref = std::move(reference);
  line.item = {"L1"};
  line.ordered_on = today - days{days_ago};
  line.quantity = line.received_quantity = quantity;
  line.received_on = line.ordered_on + days{10};
  line.unit_cost = cents(cost);
  clinic.order_lines.push_back(line);
  return clinic.order_lines.back();
}

inline InvoiceLine& add_invoice(Clinic& clinic, std::string reference, std::string order,
                                int quantity, int days_ago, std::int64_t cost = 10000) {
  InvoiceLine line;
  line.supplier = {"Example Supplies"};
  line.invoice_ref = std::move(reference);
  line.order_ref = std::move(order);
  line.item = {"L1"};
  line.quantity = quantity;
  line.unit_cost = cents(cost);
  line.invoiced_on = today - days{days_ago};
  clinic.invoice_lines.push_back(line);
  return clinic.invoice_lines.back();
}

/// The only finding; its kind is `FindingKind{}` when there is not exactly one.
inline BillingFinding only_finding(const SupplierBooks& books) {
  return books.findings.size() == 1 ? books.findings.front() : BillingFinding{};
}

}  // namespace sparewell::billing::testing
