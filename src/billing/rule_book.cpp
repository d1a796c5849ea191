#include "billing/rule_book.hpp"

#include <algorithm>
#include <utility>

namespace sparewell::billing {

RuleBook::RuleBook(std::span<const PayerRule> rows) {
  for (const PayerRule& row : rows) rules_[{row.rule, row.payer, row.code}].push_back(row);
  for (auto& [place, list] : rules_) {
    std::ranges::stable_sort(
        list, [](const PayerRule& a, const PayerRule& b) { return a.valid_from < b.valid_from; });
  }
}

std::vector<const PayerRule*> RuleBook::all(PayerRuleKind kind, const std::string& payer,
                                            const std::string& code, Date day) const {
  const std::string every;
  const std::pair<const std::string&, const std::string&> nearest_first[] = {
      {payer, code}, {payer, every}, {every, code}, {every, every}};
  for (const auto& [of_payer, of_code] : nearest_first) {
    const auto found = rules_.find({kind, of_payer, of_code});
    if (found == rules_.end()) continue;
    std::vector<const PayerRule*> valid;
    for (const PayerRule& rule : found->second) {
      if (rule.valid_on(day)) valid.push_back(&rule);
    }
    if (!valid.empty()) return valid;
  }
  return {};
}

const PayerRule* RuleBook::find(PayerRuleKind kind, const std::string& payer,
                                const std::string& code, Date day) const {
  const auto valid = all(kind, payer, code, day);
  return valid.empty() ? nullptr : valid.back();
}

}  // namespace sparewell::billing
