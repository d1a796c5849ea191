#include "desk/billing/code_tables.hpp"

#include <set>

#include <doctest/doctest.h>

#include "desk/sample_books.hpp"

namespace code_tables_test {

using namespace sparewell;

namespace {

const Date day = make_date(2026, 11, 25);

}  // namespace

TEST_CASE("the built-in codes can be read and stand once each") {
  std::set<std::string> codes;
  for (const auto& row : desk::built_in_codes()) {
    CHECK_MESSAGE(codes.insert(row.code).second, row.code);
    CHECK(row.list == "HCPCS");
  }
  // Source: HCPCS Level II, 2025 wording (SEEN in a public copy of the table).
  const auto table = desk::code_table_of({});
  CHECK(table.find("L5685", day)->description ==
        "Addition to lower extremity prosthesis, below knee, suspension/sealing sleeve, with or "
        "without valve, any material, each");
  CHECK(table.find("L7520", day)->unit == "15 minutes");
  // L5683 holds from 2004-01-01 (SEEN in a public 2026 code listing).
  CHECK(table.find("L5683", make_date(2003, 12, 31)) == nullptr);
  CHECK(table.find("L5683", make_date(2004, 1, 1)) != nullptr);
}

TEST_CASE("the built-in rules hold what was published") {
  const auto rules = desk::rule_book_of({});
  // LCD L33787: no more than two of the same socket insert at the same time (SEEN in restatements).
  CHECK(rules.find(PayerRuleKind::at_once, "", "L5673", day)->number == 2);
  CHECK(rules.find(PayerRuleKind::at_once, "", "L5685", day) == nullptr);
  // RT and LT on two lines from 2019-03-01 (SEEN, DME MAC joint publication).
  CHECK(rules.find(PayerRuleKind::side_lines, "", "L5679", make_date(2019, 2, 28)) == nullptr);
  CHECK(rules.find(PayerRuleKind::side_lines, "", "L5679", make_date(2019, 3, 1)) != nullptr);
  // The descriptor of L5683 says so itself (SEEN).
  CHECK(rules.find(PayerRuleKind::initial_only, "", "L5683", day)->words == "L5673 or L5679");
  CHECK(rules.all(PayerRuleKind::replacement_paper, "", "L5673", day).size() == 3);
  CHECK(rules.find(PayerRuleKind::early, "", "L8420", day)->days == 90);  // common practice
}

TEST_CASE("every billing code of the sample catalogue is known") {
  const auto& clinic = test::sample_clinic();
  const auto table = desk::code_table_of(clinic);
  int coded = 0;
  for (const auto& item : clinic.items) {
    if (item.billing_code.empty()) continue;
    ++coded;
    CHECK_MESSAGE(table.find(item.billing_code, day) != nullptr, item.code.text);
  }
  CHECK(coded > 100);
}

TEST_CASE("the clinic's own rows go before the built-in ones") {
  Clinic clinic;
  clinic.payer_rules.push_back({"", "L5673", PayerRuleKind::at_once, 3, {}, {}, "", {}, {}, "own"});
  clinic.billing_codes.push_back({"HCPCS", "L5673", "ours", "each", {}, {}, "own"});
  CHECK(desk::rule_book_of(clinic).find(PayerRuleKind::at_once, "", "L5673", day)->number == 3);
  CHECK(desk::code_table_of(clinic).find("L5673", day)->description == "ours");
}

}  // namespace code_tables_test
