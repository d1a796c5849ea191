// Margins, what is unbilled, and variances of suppliers; counted by hand.
#include "billing/margin.hpp"

#include <doctest/doctest.h>

#include "billing/small_supplier_books.hpp"
#include "billing/supplier_variances.hpp"
#include "billing/unbilled.hpp"

namespace margin_test {

using namespace sparewell;
using namespace sparewell::billing;
using namespace sparewell::billing::testing;

namespace {

Unit issued(const std::string& item, int days_ago) {
  Unit unit;
  unit.patient = {"P-1"};
  unit.item = {item};
  unit.issued_on = today - days{days_ago};
  return unit;
}

ClaimLine billed(const std::string& payer, int quantity) {
  ClaimLine line;
  line.claim_ref = "CL-1";
  line.patient = {"P-1"};
  line.payer = payer;
  line.quantity = quantity;
  return line;
}

PairedPieces pair_of(std::vector<std::size_t> units, std::size_t line, std::optional<Money> money) {
  PairedPieces pair;
  pair.units = std::move(units);
  pair.claim_line = line;
  pair.money = money;
  return pair;
}

/// Two pieces of L1, of which the second came after its price rose, on a line of three; one of a
/// part without a cost; one billed without a charge.
struct BilledParts {
  Clinic clinic = books_made();
  std::vector<PairedPieces> pairs;
  PaymentAnswers answers;

  BilledParts() {
    clinic.items.front().unit_cost = cents(12000);
    clinic.items.push_back(item_made("N1"));
    clinic.items.back().unit_cost.reset();
    add_order(clinic, "PO-1", 5, 300, 9000);
    add_order(clinic, "PO-2", 5, 100, 10000);
    clinic.units = {issued("L1", 200), issued("L1", 50), issued("N1", 50), issued("L1", 400)};
    clinic.claim_lines = {billed("Fund", 3), billed("Fund", 1), billed("Guild", 1)};
    pairs = {pair_of({0, 1}, 0, cents(30001)), pair_of({2}, 1, cents(5000)),
             pair_of({3}, 2, std::nullopt)};
    RemittanceLine paid;
    paid.paid = cents(40000);
    clinic.remittance_lines = {paid};
    answers.standing = {{0}, {}, {}};
  }
};

BillingFinding finding_of(FindingKind kind, Date since, std::optional<Money> money, int quantity) {
  BillingFinding finding;
  finding.kind = kind;
  finding.payer = "Fund";
  finding.supplier = {"Example Supplies"};
  finding.since = since;
  finding.money = money;
  finding.quantity = quantity;
  finding.ours = quantity + 1;
  finding.theirs = 1;
  return finding;
}

}  // namespace

TEST_CASE("a margin is the charge less what the pieces cost when they came") {
  const BilledParts made;
  const auto rows = margins(made.clinic, made.pairs, made.answers);
  REQUIRE(rows.size() == 3);
  CHECK(rows[0].item.text == "L1");
  CHECK(rows[0].payer == "Fund");
  CHECK(rows[0].pieces == 2);
  CHECK(rows[0].charge == cents(30001));
  CHECK(rows[0].cost == cents(19000));
  CHECK(rows[0].of_charge() == cents(11001));
  // Of 400.00 for three pieces two get 133.34 and 133.33.
  CHECK(rows[0].pieces_answered == 2);
  CHECK(rows[0].paid == cents(26667));
  CHECK(rows[0].of_paid() == cents(7667));
}

TEST_CASE("what is not known is told and never counted as nothing") {
  const BilledParts made;
  const auto rows = margins(made.clinic, made.pairs, made.answers);
  CHECK(rows[1].payer == "Guild");
  CHECK(rows[1].state == MarginState::no_charge);
  CHECK(rows[1].cost == cents(12000));  // no order had come: the catalogue's
  CHECK_FALSE(rows[1].of_charge().has_value());
  CHECK(rows[2].item.text == "N1");
  CHECK(rows[2].state == MarginState::no_cost);
  CHECK(rows[2].charge == cents(5000));
  CHECK_FALSE(rows[2].cost.has_value());
  CHECK(rows[2].pieces_answered == 0);
}

TEST_CASE("costs in another currency are not compared") {
  BilledParts made;
  for (auto& line : made.clinic.order_lines) line.unit_cost->currency = {"USD"};
  const auto rows = margins(made.clinic, made.pairs, made.answers);
  CHECK(rows[0].state == MarginState::other_currency);
  CHECK_FALSE(rows[0].of_charge().has_value());
  CHECK_FALSE(rows[0].of_paid().has_value());
}

TEST_CASE("what is unbilled adds up by month of issue and payer") {
  const Date october = make_date(2026, 10, 1);
  const std::vector<BillingFinding> findings{
      finding_of(FindingKind::issued_not_billed, october + days{3}, cents(500), 1),
      finding_of(FindingKind::wrong_quantity, october + days{30}, cents(700), 2),
      finding_of(FindingKind::issued_not_billed, october + days{4}, std::nullopt, 1),
      finding_of(FindingKind::issued_not_billed, october + days{31}, cents(90), 1),
      finding_of(FindingKind::billed_not_issued, october, cents(-90), 1)};
  const auto months = unbilled_by_month(findings);
  REQUIRE(months.size() == 3);
  CHECK_FALSE(months[0].currency.has_value());
  CHECK(months[0].pieces == 1);
  CHECK(months[1].month == october);
  CHECK(months[1].expected == cents(1200));
  CHECK(months[1].pieces == 3);
  CHECK(months[2].expected == cents(90));
}

TEST_CASE("a line that was billed for too many is not unbilled") {
  auto finding = finding_of(FindingKind::wrong_quantity, today, cents(-100), 1);
  finding.ours = 1;
  finding.theirs = 2;
  CHECK_FALSE(is_unbilled(finding));
}

TEST_CASE("variances of suppliers add up by month and currency") {
  const Date october = make_date(2026, 10, 1);
  std::vector<BillingFinding> findings{
      finding_of(FindingKind::price_differs, october, cents(-100), 1),
      finding_of(FindingKind::price_differs, october + days{9}, cents(30), 1),
      finding_of(FindingKind::freight_differs, october, cents(-1800), 1),
      finding_of(FindingKind::invoiced_twice, october, cents(-5000), 1),
      finding_of(FindingKind::received_not_invoiced, october, cents(-700), 1),
      finding_of(FindingKind::credit_due, october, cents(9), 1),
      finding_of(FindingKind::price_differs, october, std::nullopt, 1)};
  findings.push_back(findings.front());
  findings.back().money->currency = {"USD"};
  const auto made = supplier_variances(findings);
  CHECK(made.without_sum == 1);
  REQUIRE(made.rows.size() == 2);
  CHECK(made.rows[0].price == cents(-70));
  CHECK(made.rows[0].freight == cents(-1800));
  CHECK(made.rows[0].not_received == cents(-5000));
  CHECK(made.rows[0].not_invoiced == cents(-700));
  CHECK(made.rows[0].in_all() == cents(-7570));
  CHECK(made.rows[0].findings == 5);
  CHECK(made.rows[1].currency.code == "USD");
}

}  // namespace margin_test
