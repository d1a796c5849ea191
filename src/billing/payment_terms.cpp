#include "billing/payment_terms.hpp"

#include <algorithm>

namespace sparewell::billing {

bool has_reason(const AdjustmentSums& sums, std::string_view reason) {
  return std::ranges::any_of(sums.reasons, [&](const std::string& each) {
    return std::string_view{each}.substr(each.find(':') + 1) == reason;
  });
}

Remedy remedy_of(const AdjustmentSums& sums) {
  if (has_reason(sums, "18")) return Remedy::ask_payer;
  if (has_reason(sums, "16")) return Remedy::replace_claim;
  if (has_reason(sums, "109")) return Remedy::bill_it;
  return Remedy::appeal;
}

std::optional<Money> fee_of(const ClaimLine& line, const std::string& payer,
                            const RuleBook& rules) {
  const auto* rule = rules.find(PayerRuleKind::fee, payer, line.code, line.service_date);
  if (rule == nullptr || !rule->amount) return std::nullopt;
  const Money fee = *rule->amount * line.quantity;
  if (line.charge && line.charge->currency == fee.currency && line.charge->minor < fee.minor) {
    return line.charge;
  }
  return fee;
}

bool same_currency(const std::optional<Money>& a, const Money& b) {
  return a && a->currency == b.currency;
}

}  // namespace sparewell::billing
