/// What is said of the lines of a supplier once their pieces are matched.
#pragma once

#include "billing/supplier_match_pairs.hpp"

namespace sparewell::billing {

/// received_not_invoiced, invoiced_not_received and invoiced_twice of one supplier and item.
void find_piece_differences(const Clinic& clinic, const SupplierLines& lines,
                            const std::vector<SupplierPair>& pairs, Date today,
                            const SupplierTerms& terms, std::vector<BillingFinding>& findings);

/// price_differs of one pair: at most one for its received pieces and those on order together.
/// `pairs` are of one supplier and item.
void find_price_differences(const Clinic& clinic, const ClinicIndex& index,
                            const std::vector<SupplierPair>& pairs,
                            std::vector<BillingFinding>& findings);

/// freight_differs of all invoices of a clinic.
void find_freight_differences(const Clinic& clinic, const ClinicIndex& index,
                              const std::vector<SupplierPair>& pairs,
                              std::vector<BillingFinding>& findings);

/// What the records say less what is charged; nullopt when one is not known or they differ in
/// currency.
[[nodiscard]] std::optional<Money> money_apart(const std::optional<Money>& ours,
                                               const std::optional<Money>& theirs);

/// The invoice's part of a finding: supplier, item, reference, day, evidence.
[[nodiscard]] BillingFinding about_invoice(const Clinic& clinic, std::size_t invoice_line,
                                           FindingKind kind);

/// "price differs|Supplier|INV-1|PO-1": the word of the kind and what the records are known by.
[[nodiscard]] std::string supplier_key(FindingKind kind, std::initializer_list<std::string> parts);
[[nodiscard]] std::string supplier_key(FindingKind kind, const InvoiceLine& line);

}  // namespace sparewell::billing
