#include "billing/unbilled.hpp"

#include <map>
#include <tuple>

#include "billing/month_end.hpp"

namespace sparewell::billing {

bool is_unbilled(const BillingFinding& finding) {
  return finding.kind == FindingKind::issued_not_billed ||
         (finding.kind == FindingKind::wrong_quantity && finding.ours > finding.theirs);
}

std::vector<UnbilledMonth> unbilled_by_month(std::span<const BillingFinding> findings) {
  std::map<std::tuple<Date, std::string, std::optional<Currency>>, UnbilledMonth> months;
  for (const BillingFinding& finding : findings) {
    if (!is_unbilled(finding)) continue;
    std::optional<Currency> currency;
    if (finding.money) currency = finding.money->currency;
    const Date month = month_of(finding.since);
    auto& row = months[{month, finding.payer, currency}];
    if (row.findings == 0) {
      row = {month, finding.payer, currency, 0, 0, {0, currency.value_or(Currency{})}};
    }
    ++row.findings;
    row.pieces += finding.quantity;
    if (finding.money) row.expected = row.expected + *finding.money;
  }
  std::vector<UnbilledMonth> made;
  for (auto& [of, row] : months) made.push_back(std::move(row));
  return made;
}

}  // namespace sparewell::billing
