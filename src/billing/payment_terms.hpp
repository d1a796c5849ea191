/// What payers' codes and fees mean for a claim line.
#pragma once

#include <optional>
#include <string_view>

#include "billing/adjustments.hpp"
#include "billing/finding.hpp"
#include "billing/rule_book.hpp"

namespace sparewell::billing {

/// Whether any group names this reason, as "16".
[[nodiscard]] bool has_reason(const AdjustmentSums& sums, std::string_view reason);

/// The reason codes from memory: 16 lacks information, 18 was sent twice, 109 is another payer's.
[[nodiscard]] Remedy remedy_of(const AdjustmentSums& sums);

/// What the payer should allow for a line: its fee, never more than the charge.
[[nodiscard]] std::optional<Money> fee_of(const ClaimLine& line, const std::string& payer,
                                          const RuleBook& rules);

[[nodiscard]] bool same_currency(const std::optional<Money>& a, const Money& b);

}  // namespace sparewell::billing
