/// Orders, receipts and suppliers' invoices held against one another, piece by piece.
#pragma once

#include "billing/finding.hpp"

namespace sparewell::billing {

/// From when on something is a disagreement. All of it is common practice, no source.
struct SupplierTerms {
  int invoice_days = 30;   ///< from the receipt until an invoice is missed
  int delivery_days = 14;  ///< from the invoice until pieces that are on order are missed
  int nearness_days = 90;  ///< from the receipt until an invoice that names another order, or none
  int credit_days = 30;    ///< from the return until its credit is missed
  int claim_days = 365;    ///< how long after an ending a credit is still asked for
};

/// Pieces of an invoice line that were taken to be those of an order line.
struct SupplierPair {
  std::size_t invoice_line = 0;
  std::size_t order_line = 0;
  int quantity = 0;
  bool received = true;  ///< false: they are still on order

  friend auto operator<=>(const SupplierPair&, const SupplierPair&) = default;
};

struct SupplierBooks {
  std::vector<SupplierPair> pairs;  ///< by invoice line; a line may have several
  std::vector<BillingFinding> findings;
};

/// For each supplier and item the least costly assignment of the pieces invoiced to the pieces
/// received, then to those on order: the order that is named, then another of the same price, the
/// nearest by day. What is left is a finding: received_not_invoiced, invoiced_not_received,
/// invoiced_twice; and of what fits, price_differs and freight_differs. Does not depend on the
/// order of the records.
///
/// `money` is below zero for what the clinic was charged without having it or above what was
/// agreed, and for goods that it has and will still be charged; above zero for prices and freight
/// below those agreed. Empty where a price is not known or the currencies differ. Prices of orders
/// that name none are not compared.
[[nodiscard]] SupplierBooks match_suppliers(const Clinic& clinic, Date today,
                                            const SupplierTerms& terms = {});

}  // namespace sparewell::billing
