#include "desk/billing/payer_rules.hpp"

#include <doctest/doctest.h>

#include "desk/billing/code_tables.hpp"
#include "desk/clinic_folder.hpp"
#include "desk/sample_day.hpp"

namespace payer_rules_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

RuleRequest limit(const std::string& number) {
  RuleRequest request;
  request.payer = "Kasse";
  request.code = "L5673";
  request.rule = PayerRuleKind::at_once;
  request.number = number;
  request.source = "contract of 2026";
  return request;
}

}  // namespace

TEST_CASE("a rule of the clinic goes before the built-in one, and is changed in place") {
  const auto store = test::empty_store();
  const auto work = store->begin_write({"tester", "rule"});
  REQUIRE(set_rule(*work, limit("3")));
  REQUIRE(set_rule(*work, limit("1")));
  const auto rows = work->all<PayerRule>();
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].record.number == 1);
  CHECK(set_rule(*work, limit("1")).error().sentence.find("is so already") != std::string::npos);
  Clinic clinic;
  clinic.payer_rules = {rows[0].record};
  const auto book = rule_book_of(clinic);
  CHECK(book.find(PayerRuleKind::at_once, "Kasse", "L5673", test_today)->number == 1);
  CHECK(book.find(PayerRuleKind::at_once, "Another", "L5673", test_today)->number == 2);
}

TEST_CASE("a rule without what it needs is refused in one sentence") {
  const auto store = test::empty_store();
  const auto work = store->begin_write({"tester", "rule"});
  const auto refused = [&](RuleRequest request) {
    const auto made = set_rule(*work, request);
    REQUIRE(!made);
    return made.error().sentence;
  };
  CHECK(refused(limit("")) == "The rule \"at once\" needs a number of pieces.");
  CHECK(refused(limit("two")).starts_with("Number: write a whole number"));
  auto request = limit("2");
  request.source = "";
  CHECK(refused(request) == "Say where the rule is known from.");
  request = limit("2");
  request.valid_from = "2026-05-01";
  request.valid_to = "2026-04-01";
  CHECK(refused(request).starts_with("The last day lies before the first"));
  request = limit("");
  request.rule = PayerRuleKind::fee;
  CHECK(refused(request) == "The rule \"fee\" needs an amount.");
  request.amount = "12.505";
  CHECK(refused(request).starts_with("Amount: write an amount"));
  CHECK(work->all<PayerRule>().empty());
}

TEST_CASE("every rule is told in words with its source, and what is replaced is not in force") {
  Clinic clinic;
  PayerRule own;
  own.code = "L5673";
  own.rule = PayerRuleKind::at_once;
  own.number = 4;
  own.source = "ours";
  clinic.payer_rules = {own};
  const auto rules = listed_rules(clinic, test_today);
  CHECK(rules.size() == built_in_payer_rules().size() + 1);
  int replaced = 0;
  for (const auto& listed : rules) {
    CHECK(rule_words(listed.rule).ends_with("."));
    CHECK(!listed.rule.source.empty());
    const bool same_place =
        listed.rule.code == "L5673" && listed.rule.rule == PayerRuleKind::at_once;
    if (same_place && !listed.own) {
      ++replaced;
      CHECK(!listed.in_force);
    }
  }
  CHECK(replaced == 1);
  CHECK(rule_rows(rules).size() == rules.size());
}

}  // namespace payer_rules_test
