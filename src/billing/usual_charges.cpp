#include "billing/usual_charges.hpp"

#include <algorithm>

namespace sparewell::billing {
namespace {

constexpr int days_remembered = 365;

using Amounts = std::map<Currency, std::vector<std::int64_t>>;

Money median_of(Amounts& amounts) {
  auto most = amounts.begin();
  for (auto each = amounts.begin(); each != amounts.end(); ++each) {
    if (each->second.size() > most->second.size()) most = each;
  }
  auto& list = most->second;
  const auto middle = list.begin() + static_cast<std::ptrdiff_t>((list.size() - 1) / 2);
  std::ranges::nth_element(list, middle);
  return {*middle, most->first};
}

}  // namespace

UsualCharges::UsualCharges(const BookRules& rules, std::span<const PatientCase> cases) {
  std::map<ItemCode, Amounts> items;
  std::map<std::string, Amounts> codes;
  for (const auto& one : cases) {
    for (const auto& pair : one.pairs) {
      const Issue& issue = one.issues[pair.pieces.issue];
      if (pair.pieces.agreement != Agreement::exact || !pair.money || pair.money->minor <= 0 ||
          days_between(issue.day, rules.today) > days_remembered) {
        continue;
      }
      const std::int64_t each = pair.money->minor / pair.pieces.quantity;
      items[issue.item][pair.money->currency].push_back(each);
      codes[issue.code][pair.money->currency].push_back(each);
    }
  }
  for (auto& [item, amounts] : items) of_item_.emplace(item, median_of(amounts));
  for (auto& [code, amounts] : codes) of_code_.emplace(code, median_of(amounts));
}

std::optional<Money> UsualCharges::of(const ItemCode& item, const std::string& code) const {
  if (const auto found = of_item_.find(item); found != of_item_.end()) return found->second;
  if (const auto found = of_code_.find(code); found != of_code_.end()) return found->second;
  return std::nullopt;
}

std::optional<Money> expected_charge(const BookRules& rules, const UsualCharges& usual,
                                     const std::string& payer, const ItemCode& item,
                                     const std::string& code, Date day) {
  const auto* fee = rules.rules->find(PayerRuleKind::fee, payer, code, day);
  if (fee != nullptr && fee->amount) return fee->amount;
  return usual.of(item, code);
}

}  // namespace sparewell::billing
