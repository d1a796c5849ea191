// Credits that suppliers owe; counted by hand.
#include "billing/credits.hpp"

#include <doctest/doctest.h>

#include "billing/small_supplier_books.hpp"

namespace credits_test {

using namespace sparewell;
using namespace sparewell::billing;
using namespace sparewell::billing::testing;

namespace {

SupplierReturn sent_back(int days_ago, int quantity) {
  SupplierReturn sent;
  sent.number = 7;
  sent.supplier = {"Example Supplies"};
  sent.reference = "RMA-12";
  sent.lot = {{"L1"}, "A17", {}};
  sent.quantity = quantity;
  sent.sent_on = today - days{days_ago};
  sent.due = cents(20000);
  return sent;
}

Unit recalled(int days_ago) {
  Unit unit;
  unit.patient = {"P-1"};
  unit.item = {"L1"};
  unit.lot = "A17";
  unit.issued_on = today - days{days_ago + 100};
  unit.ended_on = today - days{days_ago};
  unit.end_reason = EndReason::recall;
  return unit;
}

}  // namespace

TEST_CASE("an open return is missed after its days, with what is outstanding") {
  auto clinic = books_made();
  clinic.supplier_returns.push_back(sent_back(31, 2));
  clinic.supplier_returns.back().credited = cents(5000);
  const auto findings = credit_findings(clinic, today);
  REQUIRE(findings.size() == 1);
  CHECK(findings.front().kind == FindingKind::credit_due);
  CHECK(findings.front().money == cents(15000));
  CHECK(findings.front().since == today - days{31});
  CHECK(findings.front().reference == "RMA-12");
  CHECK(findings.front().evidence.supplier_returns == std::vector<std::size_t>{0});
  CHECK(credit_findings(clinic, today - days{1}).empty());
  clinic.supplier_returns.back().closed_on = today;
  CHECK(credit_findings(clinic, today).empty());
}

TEST_CASE("a return of which nobody knows what is due stays on the list") {
  auto clinic = books_made();
  clinic.supplier_returns.push_back(sent_back(31, 2));
  clinic.supplier_returns.back().due.reset();
  const auto findings = credit_findings(clinic, today);
  REQUIRE(findings.size() == 1);
  CHECK_FALSE(findings.front().money.has_value());
}

TEST_CASE("recalled parts that were not sent to their supplier are due a credit") {
  auto clinic = books_made();
  clinic.units = {recalled(60), recalled(50), recalled(400)};
  auto findings = credit_findings(clinic, today);
  REQUIRE(findings.size() == 1);
  CHECK(findings.front().quantity == 2);
  CHECK(findings.front().money == cents(20000));
  CHECK(findings.front().cause == Cause::not_recorded);
  CHECK(findings.front().since == today - days{60});
  clinic.supplier_returns.push_back(sent_back(20, 1));
  findings = credit_findings(clinic, today);
  REQUIRE(findings.size() == 1);
  CHECK(findings.front().quantity == 1);
  clinic.supplier_returns.back().quantity = 2;
  CHECK(credit_findings(clinic, today).empty());
}

}  // namespace credits_test
