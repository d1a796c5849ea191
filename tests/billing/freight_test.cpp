// Freight on suppliers' invoices against their terms; counted by hand.
#include <doctest/doctest.h>

#include "billing/small_supplier_books.hpp"

namespace freight_test {

using namespace sparewell;
using namespace sparewell::billing;
using namespace sparewell::billing::testing;

namespace {

/// 18.00 for each order, none from 1500.00 of goods.
Clinic books_with_freight() {
  auto clinic = books_made();
  clinic.suppliers.front().freight = cents(1800);
  clinic.suppliers.front().free_freight_from = cents(150000);
  return clinic;
}

}  // namespace

TEST_CASE("freight by the supplier's terms is no finding") {
  auto clinic = books_with_freight();
  add_order(clinic, "PO-1", 5, 200);
  add_order(clinic, "PO-2", 15, 150);
  add_invoice(clinic, "INV-1", "PO-1", 5, 188).freight = cents(1800);
  add_invoice(clinic, "INV-2", "PO-2", 15, 138).freight = cents(0);
  CHECK(match_suppliers(clinic, today).findings.empty());
}

TEST_CASE("freight that is too much, too little, or charged although the goods are worth none") {
  auto clinic = books_with_freight();
  add_order(clinic, "PO-1", 5, 200);
  auto& invoice = add_invoice(clinic, "INV-1", "PO-1", 5, 188);
  invoice.freight = cents(2500);
  auto finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.kind == FindingKind::freight_differs);
  CHECK(finding.our_amount == cents(1800));
  CHECK(finding.their_amount == cents(2500));
  CHECK(finding.money == cents(-700));
  CHECK(finding.cause == Cause::unknown);
  CHECK(finding.reference == "INV-1");
  clinic.invoice_lines.front().freight = cents(1000);
  CHECK(only_finding(match_suppliers(clinic, today)).money == cents(800));
  clinic.invoice_lines.front().freight = cents(1800);
  clinic.order_lines.front().quantity = 15;
  clinic.order_lines.front().received_quantity = 15;
  clinic.invoice_lines.front().quantity = 15;
  finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.cause == Cause::free_freight_missed);
  CHECK(finding.money == cents(-1800));
}

TEST_CASE("an invoice without freight is looked at where the supplier states freight at all") {
  auto clinic = books_with_freight();
  add_order(clinic, "PO-1", 5, 200);
  add_order(clinic, "PO-2", 5, 150);
  add_invoice(clinic, "INV-1", "PO-1", 5, 188);
  add_invoice(clinic, "INV-2", "PO-2", 5, 138);
  CHECK(match_suppliers(clinic, today).findings.empty());
  clinic.invoice_lines.back().freight = cents(1800);
  const auto finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.reference == "INV-1");
  CHECK(finding.money == cents(1800));
}

TEST_CASE("freight is due once for an order that comes in parts") {
  auto clinic = books_with_freight();
  add_order(clinic, "PO-1", 5, 200);
  add_invoice(clinic, "INV-1", "PO-1", 2, 188);
  add_invoice(clinic, "INV-2", "PO-1", 3, 180).freight = cents(1800);
  CHECK(match_suppliers(clinic, today).findings.empty());
  clinic.invoice_lines.front().freight = cents(1800);
  const auto finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.reference == "INV-2");
  CHECK(finding.money == cents(-1800));
}

TEST_CASE("freight once or for each of two orders on one invoice is in order") {
  auto clinic = books_with_freight();
  add_order(clinic, "PO-1", 2, 200);
  add_order(clinic, "PO-2", 3, 199);
  add_invoice(clinic, "INV-1", "PO-1", 5, 188).freight = cents(1800);
  CHECK(match_suppliers(clinic, today).findings.empty());
  clinic.invoice_lines.front().freight = cents(3600);
  CHECK(match_suppliers(clinic, today).findings.empty());
  clinic.invoice_lines.front().freight = cents(5400);
  CHECK(only_finding(match_suppliers(clinic, today)).money == cents(-3600));
}

TEST_CASE("an invoice that repeats another bears no freight") {
  auto clinic = books_with_freight();
  add_order(clinic, "PO-1", 5, 200);
  add_invoice(clinic, "INV-1", "PO-1", 5, 188).freight = cents(1800);
  add_invoice(clinic, "INV-2", "PO-1", 5, 180).freight = cents(1800);
  const auto findings = match_suppliers(clinic, today).findings;
  REQUIRE(findings.size() == 2);
  CHECK(findings[0].kind == FindingKind::freight_differs);
  CHECK(findings[0].money == cents(-1800));
  CHECK(findings[1].kind == FindingKind::invoiced_twice);
  CHECK(findings[1].reference == "INV-2");
}

TEST_CASE("freight in another currency than the supplier's is shown and not subtracted") {
  auto clinic = books_with_freight();
  add_order(clinic, "PO-1", 5, 200);
  add_invoice(clinic, "INV-1", "PO-1", 5, 188).freight = Money{1800, Currency{"USD"}};
  const auto finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.kind == FindingKind::freight_differs);
  CHECK_FALSE(finding.money.has_value());
}

}  // namespace freight_test
