#include "billing/supplier_match.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "billing/supplier_match_findings.hpp"

namespace sparewell::billing {

std::optional<Money> money_apart(const std::optional<Money>& ours,
                                 const std::optional<Money>& theirs) {
  if (!ours || !theirs || ours->currency != theirs->currency) return std::nullopt;
  return Money{ours->minor - theirs->minor, ours->currency};
}

std::string supplier_key(FindingKind kind, std::initializer_list<std::string> parts) {
  return fmt::format("{}|{}", finding_word(kind), fmt::join(parts, "|"));
}

std::string supplier_key(FindingKind kind, const InvoiceLine& line) {
  return supplier_key(kind, {line.supplier.text, line.invoice_ref, line.order_ref, line.item.text,
                             std::to_string(line.copy)});
}

BillingFinding about_invoice(const Clinic& clinic, std::size_t invoice_line, FindingKind kind) {
  const InvoiceLine& line = clinic.invoice_lines[invoice_line];
  BillingFinding finding;
  finding.kind = kind;
  finding.key = supplier_key(kind, line);
  finding.item = line.item;
  finding.supplier = line.supplier;
  finding.reference = line.invoice_ref;
  finding.theirs = line.quantity;
  finding.their_amount = line.unit_cost;
  finding.other = line.order_ref;
  finding.remedy = Remedy::ask_supplier;
  if (line.invoiced_on) finding.since = *line.invoiced_on;
  finding.evidence.invoice_lines.push_back(invoice_line);
  return finding;
}

SupplierBooks match_suppliers(const Clinic& clinic, Date today, const SupplierTerms& terms) {
  const ClinicIndex index{clinic};
  SupplierBooks books;
  for (const SupplierLines& lines : supplier_lines(clinic)) {
    const auto pairs = match_pieces(clinic, lines, terms);
    find_piece_differences(clinic, lines, pairs, today, terms, books.findings);
    find_price_differences(clinic, index, pairs, books.findings);
    books.pairs.insert(books.pairs.end(), pairs.begin(), pairs.end());
  }
  find_freight_differences(clinic, index, books.pairs, books.findings);
  std::ranges::sort(books.pairs);
  sort_findings(books.findings);
  return books;
}

}  // namespace sparewell::billing
