/// Which invoiced pieces of one supplier and item are which ordered ones.
#pragma once

#include <span>

#include "billing/supplier_match.hpp"

namespace sparewell::billing {

/// The lines of one supplier and item, by position in the Clinic, in an order that the records
/// give: orders by day and reference, invoices likewise, those without a day last.
struct SupplierLines {
  std::vector<std::size_t> orders;
  std::vector<std::size_t> invoices;
};

/// All of a clinic, by supplier and item.
[[nodiscard]] std::vector<SupplierLines> supplier_lines(const Clinic& clinic);

/// The same order, item, quantity and price.
[[nodiscard]] bool are_alike(const InvoiceLine& a, const InvoiceLine& b);

/// The assignment of least cost, by network simplex on whole numbers. A piece costs, from the
/// dearest to the cheapest: to be left over; to be of another order that has not come; of the named
/// order that has not come; of another order, when it came; of the named order, when it came.
/// Within these count a price that differs, whether the line repeats an earlier one, days between
/// invoice and receipt, and the place of the invoice, so that of two the later one is left over.
[[nodiscard]] std::vector<SupplierPair> match_pieces(const Clinic& clinic,
                                                     const SupplierLines& lines,
                                                     const SupplierTerms& terms);

}  // namespace sparewell::billing
