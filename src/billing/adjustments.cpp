#include "billing/adjustments.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace sparewell::billing {
namespace {

std::int64_t AdjustmentSums::*class_of(const Adjustment& adjustment) {
  static constexpr std::array<std::string_view, 4> agreed{"42", "45", "131", "253"};
  if (adjustment.group == "PR") return &AdjustmentSums::patient;
  if (adjustment.group == "CO" && std::ranges::find(agreed, adjustment.reason) != agreed.end()) {
    return &AdjustmentSums::contractual;
  }
  if (adjustment.group == "OA" && adjustment.reason == "23") return &AdjustmentSums::earlier_payer;
  return &AdjustmentSums::other;
}

void add_reason(AdjustmentSums& sums, const std::string& reason, bool other) {
  if (std::ranges::find(sums.reasons, reason) != sums.reasons.end()) return;
  const auto at = other ? sums.others++ : sums.reasons.size();
  sums.reasons.insert(sums.reasons.begin() + static_cast<std::ptrdiff_t>(at), reason);
}

}  // namespace

void AdjustmentSums::add(const AdjustmentSums& more) {
  contractual += more.contractual;
  patient += more.patient;
  earlier_payer += more.earlier_payer;
  other += more.other;
  for (std::size_t i = 0; i < more.reasons.size(); ++i) {
    add_reason(*this, more.reasons[i], i < more.others);
  }
}

AdjustmentSums adjustment_sums(const RemittanceLine& line) {
  AdjustmentSums sums;
  std::int64_t left = line.charge.minor - line.paid.minor;
  for (const auto& text : line.adjustments) {
    const auto adjustment = parse_adjustment(text, line.paid.currency);
    if (!adjustment) continue;
    const auto member = class_of(*adjustment);
    sums.*member += adjustment->amount.minor;
    left -= adjustment->amount.minor;
    if (adjustment->amount.minor == 0) continue;
    add_reason(sums, fmt::format("{}:{}", adjustment->group, adjustment->reason),
               member == &AdjustmentSums::other);
  }
  sums.other += left;
  return sums;
}

}  // namespace sparewell::billing
