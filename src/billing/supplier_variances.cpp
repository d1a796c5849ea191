#include "billing/supplier_variances.hpp"

#include <map>
#include <tuple>

#include "billing/month_end.hpp"

namespace sparewell::billing {
namespace {

/// Which sum of the row the finding goes into; nullptr when it is about something else.
Money* sum_of(SupplierVariance& row, FindingKind kind) {
  switch (kind) {
    case FindingKind::price_differs:
      return &row.price;
    case FindingKind::received_not_invoiced:
      return &row.not_invoiced;
    case FindingKind::invoiced_not_received:
    case FindingKind::invoiced_twice:
      return &row.not_received;
    case FindingKind::freight_differs:
      return &row.freight;
    default:
      return nullptr;
  }
}

SupplierVariance empty_row(const SupplierName& supplier, Date month, const Currency& currency) {
  const Money none{0, currency};
  return {supplier, month, currency, 0, none, none, none, none};
}

}  // namespace

SupplierVariances supplier_variances(std::span<const BillingFinding> findings) {
  std::map<std::tuple<SupplierName, Date, Currency>, SupplierVariance> rows;
  SupplierVariances made;
  for (const BillingFinding& finding : findings) {
    SupplierVariance none;
    if (sum_of(none, finding.kind) == nullptr) continue;
    if (!finding.money) {
      ++made.without_sum;
      continue;
    }
    const Currency& currency = finding.money->currency;
    const Date month = month_of(finding.since);
    auto& row = rows.try_emplace({finding.supplier, month, currency},
                                 empty_row(finding.supplier, month, currency))
                    .first->second;
    ++row.findings;
    Money& sum = *sum_of(row, finding.kind);
    sum = sum + *finding.money;
  }
  for (auto& [of, row] : rows) made.rows.push_back(std::move(row));
  return made;
}

}  // namespace sparewell::billing
