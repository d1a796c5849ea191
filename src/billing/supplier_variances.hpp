/// How far suppliers' invoices are from what was ordered and received, by month.
#pragma once

#include <span>
#include <vector>

#include "billing/finding.hpp"

namespace sparewell::billing {

/// Sums of BillingFinding::money of one supplier, month and currency, see match_suppliers for what
/// is above and below zero.
struct SupplierVariance {
  SupplierName supplier;
  Date month;  ///< of the invoice, of the receipt where there is none; its first day
  Currency currency;
  int findings = 0;
  Money price;
  Money not_invoiced;  ///< received_not_invoiced
  Money not_received;  ///< invoiced_not_received and invoiced_twice
  Money freight;

  [[nodiscard]] Money in_all() const { return price + not_invoiced + not_received + freight; }
};

struct SupplierVariances {
  std::vector<SupplierVariance> rows;  ///< by supplier, month and currency
  int without_sum = 0;                 ///< findings whose money is not known
};

/// Of the findings about orders, receipts and invoices; credits and warranties are left out.
[[nodiscard]] SupplierVariances supplier_variances(std::span<const BillingFinding> findings);

}  // namespace sparewell::billing
