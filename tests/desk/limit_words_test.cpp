#include <algorithm>

#include <doctest/doctest.h>

#include "desk/issue_check.hpp"

namespace limit_words_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

const Date today = make_date(2026, 11, 25);

/// A patient with `worn` liners in use on the left since `days_ago`.
Clinic made_clinic(int worn, int days_ago) {
  Clinic clinic;
  Patient patient;
  patient.ref = {"P-1"};
  patient.payer = "Thistledown Health Fund";
  clinic.patients = {patient};
  Item item;
  item.code = {"L1"};
  item.description = "Locking liner";
  item.billing_code = "L5673";
  clinic.items = {item};
  clinic.shelf = {{{{"L1"}, "LOT", {}}, "main store", 9}};
  for (int i = 0; i < worn; ++i) {
    Unit unit;
    unit.patient = {"P-1"};
    unit.item = {"L1"};
    unit.lot = std::to_string(i);
    unit.issued_on = today - days{days_ago};
    clinic.units.push_back(unit);
  }
  return clinic;
}

IssueQuestion question(int quantity) {
  IssueQuestion asked;
  asked.patient = {"P-1"};
  asked.item = {"L1"};
  asked.quantity = quantity;
  asked.day = today;
  return asked;
}

std::vector<IssueFinding> of_key(const IssueCheck& check, const std::string& key) {
  std::vector<IssueFinding> found;
  std::ranges::copy_if(check.findings, std::back_inserter(found),
                       [&](const IssueFinding& each) { return each.key == key; });
  return found;
}

std::vector<IssueFinding> asked(const Clinic& clinic, const std::string& key, int quantity = 1) {
  return of_key(*check_issue(clinic, question(quantity)), key);
}

}  // namespace

TEST_CASE("a third liner at once is asked about before it is handed out") {
  const auto found = asked(made_clinic(2, 200), "over_limit");
  REQUIRE(found.size() == 1);
  CHECK(found.front().gravity == care::Gravity::ask);
  CHECK(found.front().words.find("3 of L5673 would be in use at once on the left") !=
        std::string::npos);
  CHECK(found.front().words.find("the rule for Thistledown Health Fund allows 2") !=
        std::string::npos);
  CHECK(found.front().words.find("LCD L33787") != std::string::npos);
  CHECK(asked(made_clinic(1, 200), "over_limit").empty());
  CHECK(asked(made_clinic(1, 200), "over_limit", 2).size() == 1);
}

TEST_CASE("the clinic's own rule goes before the built-in one") {
  auto clinic = made_clinic(2, 200);
  PayerRule rule;
  rule.payer = "Thistledown Health Fund";
  rule.code = "L5673";
  rule.number = 4;
  rule.source = "their contract (invented)";
  clinic.payer_rules = {rule};
  CHECK(asked(clinic, "over_limit", 2).empty());
  const auto found = asked(clinic, "over_limit", 3);
  REQUIRE(found.size() == 1);
  CHECK(found.front().words.find("their contract (invented)") != std::string::npos);
}

TEST_CASE("an early replacement names what is needed") {
  auto clinic = made_clinic(1, 40);
  clinic.units.front().ended_on = today - days{2};
  clinic.units.front().end_reason = EndReason::other;
  auto found = asked(clinic, "early_replacement");
  REQUIRE(found.size() == 1);
  CHECK(found.front().gravity == care::Gravity::ask);
  // The three grounds of SSA 1834(h)(1)(G), wording from memory.
  for (const char* words : {"after 38 days", "change in the patient's condition",
                            "cannot be repaired", "above 60 %", "\"order\"", "\"condition\""}) {
    CHECK_MESSAGE(found.front().words.find(words) != std::string::npos, words);
  }
  clinic.units.front().end_reason = EndReason::tear;
  found = asked(clinic, "early_replacement");
  REQUIRE(found.size() == 1);
  CHECK(found.front().gravity == care::Gravity::note);
  clinic.units.front().issued_on = today - days{200};
  CHECK(asked(clinic, "early_replacement").empty());
  found = asked(clinic, "replacement");
  REQUIRE(found.size() == 1);
  CHECK(found.front().gravity == care::Gravity::note);
  for (const char* words : {"after 198 days; tear is recorded", "\"order\"", "1,095 days"}) {
    CHECK_MESSAGE(found.front().words.find(words) != std::string::npos, words);
  }
  clinic.units.front().issued_on = today - days{1200};
  CHECK(asked(clinic, "replacement").empty());
}

TEST_CASE("lent parts are not billed, so that no limit is asked about") {
  const auto clinic = made_clinic(2, 200);
  const auto check = check_pieces(clinic, question(1), clinic.shelf);
  REQUIRE(check.has_value());
  CHECK(of_key(*check, "over_limit").empty());
}

}  // namespace limit_words_test
