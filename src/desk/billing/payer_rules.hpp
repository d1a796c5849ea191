/// Payers' rules as a list, and changing them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/stock_form.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

/// A rule, and whether it is the clinic's own or one that the program is built with.
struct ListedRule {
  PayerRule rule;
  bool own = false;
  bool in_force = true;  ///< on the day; an own rule goes before a built-in one in the same place
};

/// All rules, by payer, code and kind; later ones first.
[[nodiscard]] std::vector<ListedRule> listed_rules(const Clinic& clinic, Date today);

/// "No more than 2 at once on one side."
[[nodiscard]] std::string rule_words(const PayerRule& rule);

[[nodiscard]] std::vector<Column> rule_columns();
/// The id of a row is its position in `rules`.
[[nodiscard]] std::vector<TableRow> rule_rows(const std::vector<ListedRule>& rules);

/// A rule as it is typed; what is empty is not stated.
struct RuleRequest {
  std::string payer;
  std::string code;
  PayerRuleKind rule = PayerRuleKind::at_once;
  std::string number;
  std::string days;
  std::string amount;  ///< in the clinic's currency
  std::string words;
  std::string valid_from;
  std::string valid_to;
  std::string source;
};

/// Adds the rule, or puts it in place of the clinic's own with the same payer, code, kind, words
/// and first day. Refuses, writing nothing: no source, what is no number, amount or day, a rule
/// without what it needs, a rule that is so already.
[[nodiscard]] Expected<PayerRule> set_rule(store::UnitOfWork& work, const RuleRequest& request);

/// The questions that the window asks; filled in from `rule` where one is chosen.
[[nodiscard]] StockForm rule_form(const Day& day, const std::optional<PayerRule>& rule);

}  // namespace sparewell::desk
