/// Looking up what a payer requires of a code on a day.
#pragma once

#include <map>
#include <span>
#include <string>
#include <tuple>
#include <vector>

#include "clinic/billing_code.hpp"

namespace sparewell::billing {

class RuleBook {
 public:
  /// Of rows with the same payer, code and kind that hold on a day the one with the later first day
  /// counts, and of those the later row: the clinic's own come last.
  explicit RuleBook(std::span<const PayerRule> rows);

  /// The row that is nearest: of the payer and code, of the payer, of the code for every payer, or
  /// for everything. nullptr when there is none.
  [[nodiscard]] const PayerRule* find(PayerRuleKind kind, const std::string& payer,
                                      const std::string& code, Date day) const;
  /// All of the nearest rows, for kinds of which several hold at once (papers).
  [[nodiscard]] std::vector<const PayerRule*> all(PayerRuleKind kind, const std::string& payer,
                                                  const std::string& code, Date day) const;

 private:
  using Place = std::tuple<PayerRuleKind, std::string, std::string>;  ///< kind, payer, code

  std::map<Place, std::vector<PayerRule>> rules_;
};

}  // namespace sparewell::billing
