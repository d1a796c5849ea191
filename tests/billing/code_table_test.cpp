#include "billing/code_table.hpp"

#include <doctest/doctest.h>

#include "billing/rule_book.hpp"

namespace code_table_test {

using namespace sparewell;
using namespace sparewell::billing;

namespace {

const Date spring = make_date(2026, 3, 1);
const Date autumn = make_date(2026, 10, 1);

BillingCode code(std::string text, std::optional<Date> from, std::optional<Date> to) {
  BillingCode made;
  made.list = "TEST";
  made.code = "Z0001";
  made.description = std::move(text);
  made.valid_from = from;
  made.valid_to = to;
  return made;
}

PayerRule rule(std::string payer, std::string of_code, int number) {
  PayerRule made;
  made.payer = std::move(payer);
  made.code = std::move(of_code);
  made.number = number;
  return made;
}

}  // namespace

TEST_CASE("a code is the row that holds on the day") {
  const std::vector<BillingCode> rows{code("old", {}, autumn - days{1}), code("new", autumn, {})};
  const CodeTable table{rows};
  CHECK(table.find("Z0001", spring)->description == "old");
  CHECK(table.find("Z0001", autumn)->description == "new");
  CHECK(table.find("Z0002", autumn) == nullptr);
}

TEST_CASE("a later row with the same first day replaces the earlier one") {
  const std::vector<BillingCode> rows{code("built in", spring, {}), code("own", spring, autumn)};
  const CodeTable table{rows};
  CHECK(table.find("Z0001", spring)->description == "own");
  CHECK(table.find("Z0001", autumn + days{1}) == nullptr);
  CHECK(table.knows("Z0001"));
}

TEST_CASE("the nearest rule counts: payer and code, payer, code, everything") {
  const std::vector<PayerRule> rows{rule("", "", 1), rule("", "Z0001", 2), rule("Ours", "", 3),
                                    rule("Ours", "Z0001", 4)};
  const RuleBook book{rows};
  const auto number = [&](const char* payer, const char* of_code) {
    return book.find(PayerRuleKind::at_once, payer, of_code, spring)->number.value();
  };
  CHECK(number("Ours", "Z0001") == 4);
  CHECK(number("Ours", "Z0002") == 3);
  CHECK(number("Theirs", "Z0001") == 2);
  CHECK(number("Theirs", "Z0002") == 1);
  CHECK(book.find(PayerRuleKind::fee, "Ours", "Z0001", spring) == nullptr);
}

}  // namespace code_table_test
