#include <algorithm>

#include "clinic/say.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

namespace {

template <class Dated>
std::optional<Fault> check_validity(Dated& row) {
  if (row.valid_from && row.valid_to && *row.valid_to < *row.valid_from) {
    return Fault{"valid_to", say("{} is before valid_from {}; correct one of them",
                                 iso_text(*row.valid_to), iso_text(*row.valid_from))};
  }
  return std::nullopt;
}

/// What a rule cannot do without.
std::optional<Fault> check_rule(PayerRule& rule) {
  const auto missing = [&](std::string_view column) {
    return Fault{std::string{column},
                 say("is empty, but the rule '{}' needs it; fill it in", word(rule.rule))};
  };
  using Rule = PayerRuleKind;
  const auto is_any_of = [&](std::initializer_list<Rule> kinds) {
    return std::ranges::find(kinds, rule.rule) != kinds.end();
  };
  if (!rule.number && is_any_of({Rule::at_once, Rule::in_period})) return missing("number");
  if (!rule.days && is_any_of({Rule::in_period, Rule::early, Rule::confirmation, Rule::included,
                               Rule::answer, Rule::submit})) {
    return missing("days");
  }
  if (!rule.amount && rule.rule == Rule::fee) return missing("amount");
  if (rule.words.empty() && is_any_of({Rule::paper, Rule::replacement_paper})) {
    return missing("words");
  }
  return check_validity(rule);
}

}  // namespace

const Table<BillingCode>& codes_table() {
  static const Table<BillingCode> table{
      .file = "codes.csv",
      .columns = {name_column("list", Need::required, &BillingCode::list).key(),
                  name_column("code", Need::required, &BillingCode::code).key(),
                  column("description", Need::required, &BillingCode::description, read_text),
                  name_column("unit", Need::optional, &BillingCode::unit),
                  column("valid_from", Need::optional, &BillingCode::valid_from, read_date).key(),
                  column("valid_to", Need::optional, &BillingCode::valid_to, read_date),
                  column("source", Need::required, &BillingCode::source, read_text)},
      .check = check_validity<BillingCode>};
  return table;
}

const Table<PayerRule>& payer_rules_table() {
  static const Table<PayerRule> table{
      .file = "payer_rules.csv",
      .columns = {name_column("payer", Need::optional, &PayerRule::payer).key(),
                  name_column("code", Need::optional, &PayerRule::code).key(),
                  word_column("rule", Need::required, &PayerRule::rule).key(),
                  column("number", Need::optional, &PayerRule::number,
                         whole_between(0, 10'000, to_say("0 to 10000 pieces"))),
                  column("days", Need::optional, &PayerRule::days,
                         whole_between(0, 3650, to_say("0 to 3650 days"))),
                  column("amount", Need::optional, &PayerRule::amount, read_money),
                  name_column("words", Need::optional, &PayerRule::words).key(),
                  column("valid_from", Need::optional, &PayerRule::valid_from, read_date).key(),
                  column("valid_to", Need::optional, &PayerRule::valid_to, read_date),
                  column("source", Need::required, &PayerRule::source, read_text)},
      .has_amounts = true,
      .check = check_rule};
  return table;
}

}  // namespace sparewell::exchange
