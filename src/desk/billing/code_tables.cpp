#include "desk/billing/code_tables.hpp"

#include <charconv>

#include "billing_texts.hpp"
#include "desk/embedded_table.hpp"

namespace sparewell::desk {
namespace {

using Cells = std::span<const std::string>;

void for_each_row(std::string_view file, std::size_t columns,
                  const std::function<bool(Cells)>& take) {
  for (std::size_t i = 0; i < billing_texts::embedded_text_count; ++i) {
    const auto& embedded = billing_texts::embedded_texts[i];
    if (embedded.name == file) for_each_table_row(file, embedded.text, columns, take);
  }
}

/// False for text that is no day; nothing recorded for "".
bool read_day(const std::string& text, std::optional<Date>& day) {
  day = parse_iso_date(text);
  return day || text.empty();
}

/// Likewise for a whole number of 1 or more.
bool read_number(const std::string& text, std::optional<int>& number) {
  if (text.empty()) return true;
  int value = 0;
  const char* const end = text.data() + text.size();
  const auto [stopped, error] = std::from_chars(text.data(), end, value);
  if (error != std::errc{} || stopped != end || value < 1) return false;
  number = value;
  return true;
}

bool read_amount(const std::string& text, const std::string& code, std::optional<Money>& amount) {
  if (text.empty()) return code.empty();
  const auto currency = parse_currency(code);
  if (!currency) return false;
  const auto money = parse_money(text, *currency);
  if (!money) return false;
  amount = *money;
  return true;
}

std::vector<BillingCode> read_codes() {
  std::vector<BillingCode> codes;
  for_each_row("codes.csv", 7, [&](Cells cells) {
    BillingCode code{cells[0], cells[1], cells[2], cells[3], {}, {}, cells[6]};
    const bool usable = !code.list.empty() && !code.code.empty() && !code.description.empty() &&
                        !code.source.empty() && read_day(cells[4], code.valid_from) &&
                        read_day(cells[5], code.valid_to);
    codes.push_back(std::move(code));
    return usable;
  });
  return codes;
}

std::vector<PayerRule> read_payer_rules() {
  std::vector<PayerRule> rules;
  for_each_row("payer_rules.csv", 11, [&](Cells cells) {
    const auto kind = parse_word<PayerRuleKind>(cells[2]);
    if (!kind) return false;
    PayerRule rule;
    rule.payer = cells[0];
    rule.code = cells[1];
    rule.rule = *kind;
    rule.words = cells[7];
    rule.source = cells[10];
    const bool usable = read_number(cells[3], rule.number) && read_number(cells[4], rule.days) &&
                        read_amount(cells[5], cells[6], rule.amount) &&
                        read_day(cells[8], rule.valid_from) && read_day(cells[9], rule.valid_to) &&
                        !rule.source.empty();
    rules.push_back(std::move(rule));
    return usable;
  });
  return rules;
}

template <class Row>
std::vector<Row> joined(std::vector<Row> rows, const std::vector<Row>& own) {
  rows.insert(rows.end(), own.begin(), own.end());
  return rows;
}

}  // namespace

const std::vector<BillingCode>& built_in_codes() {
  static const std::vector<BillingCode> codes = read_codes();
  return codes;
}

const std::vector<PayerRule>& built_in_payer_rules() {
  static const std::vector<PayerRule> rules = read_payer_rules();
  return rules;
}

billing::CodeTable code_table_of(const Clinic& clinic) {
  return billing::CodeTable{joined(built_in_codes(), clinic.billing_codes)};
}

billing::RuleBook rule_book_of(const Clinic& clinic) {
  return billing::RuleBook{joined(built_in_payer_rules(), clinic.payer_rules)};
}

}  // namespace sparewell::desk
