/// What was handed out and not billed, by month and payer.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "billing/finding.hpp"

namespace sparewell::billing {

/// Pieces were handed out that no claim bills: nothing was billed of them, or fewer.
[[nodiscard]] bool is_unbilled(const BillingFinding& finding);

struct UnbilledMonth {
  Date month;  ///< of issue, its first day
  std::string payer;
  std::optional<Currency> currency;  ///< empty where no charge can be expected
  int findings = 0;
  int pieces = 0;
  Money expected;  ///< sum of the charges to be expected; zero where none is known
};

/// By month, payer and currency, those without a known charge apart. The sums of a currency are
/// those of the findings' money.
[[nodiscard]] std::vector<UnbilledMonth> unbilled_by_month(
    std::span<const BillingFinding> findings);

}  // namespace sparewell::billing
