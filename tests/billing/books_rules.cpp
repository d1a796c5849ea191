// Codes, prices and payers' rules of the books that are made.
#include <map>

#include "billing/books_made.hpp"

namespace sparewell::test {

std::int64_t price_of(const std::string& code) {
  static const std::map<std::string, std::int64_t> prices{
      {"L5673", 70011}, {"L5679", 64007}, {"L5685", 11003}, {"L8420", 2101},
      {"L8400", 1507},  {"L5671", 50001}, {"L7600", 8900},  {"L5683", 80003}};
  return prices.at(code);
}

billing::CodeTable test_codes() {
  std::vector<BillingCode> rows;
  for (const char* code :
       {"L5671", "L5673", "L5679", "L5683", "L5685", "L7600", "L8400", "L8420"}) {
    rows.push_back({"HCPCS", code, "invented for tests", "each", {}, {}, "invented"});
  }
  rows.push_back({"HCPCS", "L7520", "work", "15 minutes", {}, {}, "invented"});
  rows.push_back({"HCPCS", "L5660", "ended", "each", {}, make_date(2020, 12, 31), "invented"});
  return billing::CodeTable{rows};
}

billing::RuleBook test_rules() {
  std::vector<PayerRule> rows;
  const auto add = [&](std::string payer, std::string code, PayerRuleKind kind,
                       std::optional<int> number, std::optional<int> days, std::string said) {
    PayerRule rule;
    rule.payer = std::move(payer);
    rule.code = std::move(code);
    rule.rule = kind;
    rule.number = number;
    rule.days = days;
    rule.words = std::move(said);
    rule.source = "invented";
    if (kind == PayerRuleKind::fee) rule.amount = cents(price_of(rule.code));
    rows.push_back(std::move(rule));
  };
  for (const char* code : {"L5673", "L5679", "L5683"}) {
    add("", code, PayerRuleKind::at_once, 2, {}, "");
    add("", code, PayerRuleKind::side_lines, {}, {}, "");
  }
  add("", "L5683", PayerRuleKind::initial_only, 1, {}, "L5673 or L5679");
  add("Payer A", "L8400", PayerRuleKind::in_period, 12, 365, "");
  add("Payer B", "L8400", PayerRuleKind::in_period, 12, 365, "");
  add("", "L5671", PayerRuleKind::fee, {}, {}, "");
  add("", "", PayerRuleKind::early, {}, 90, "");
  add("", "", PayerRuleKind::paper, {}, {}, "order");
  add("", "", PayerRuleKind::replacement_paper, {}, {}, "condition");
  add("", "", PayerRuleKind::replacement_paper, {}, {}, "cost share");
  return billing::RuleBook{rows};
}

}  // namespace sparewell::test
