// Orders, receipts and invoices of suppliers; every expected value is counted by hand from the
// records beside it.
#include "billing/supplier_match.hpp"

#include <doctest/doctest.h>

#include "billing/small_supplier_books.hpp"

namespace supplier_match_test {

using namespace sparewell;
using namespace sparewell::billing;
using namespace sparewell::billing::testing;

TEST_CASE("what was ordered, received and invoiced alike is no finding") {
  auto clinic = books_made();
  add_order(clinic, "PO-1", 5, 100);
  add_invoice(clinic, "INV-1", "PO-1", 5, 88);
  const auto books = match_suppliers(clinic, today);
  CHECK(books.findings.empty());
  REQUIRE(books.pairs.size() == 1);
  CHECK(books.pairs.front() == SupplierPair{0, 0, 5, true});
}

TEST_CASE("one invoice for two orders, and two invoices for one order, fit") {
  auto clinic = books_made();
  add_order(clinic, "PO-1", 2, 100);
  add_order(clinic, "PO-2", 3, 98);
  add_order(clinic, "PO-3", 9, 60);
  add_invoice(clinic, "INV-1", "PO-1", 5, 85);
  add_invoice(clinic, "INV-2", "PO-3", 4, 49);
  add_invoice(clinic, "INV-3", "PO-3", 5, 44);
  CHECK(match_suppliers(clinic, today).findings.empty());
}

TEST_CASE("an invoice that names no order, or a wrong one, goes to the nearest that is open") {
  auto clinic = books_made();
  add_order(clinic, "PO-1", 2, 200);
  add_order(clinic, "PO-2", 2, 150);
  add_order(clinic, "PO-3", 2, 100);
  add_invoice(clinic, "INV-1", "PO-1", 2, 188);
  add_invoice(clinic, "INV-2", "PO-1", 2, 138);
  add_invoice(clinic, "INV-3", "", 2, 88);
  const auto books = match_suppliers(clinic, today);
  CHECK(books.findings.empty());
  CHECK(books.pairs ==
        std::vector<SupplierPair>{{0, 0, 2, true}, {1, 1, 2, true}, {2, 2, 2, true}});
}

TEST_CASE("received and not invoiced is missed after its days of grace") {
  auto clinic = books_made();
  add_order(clinic, "PO-1", 5, 41);
  CHECK(only_finding(match_suppliers(clinic, today)).kind == FindingKind::received_not_invoiced);
  add_invoice(clinic, "INV-1", "PO-1", 3, 30);
  const auto finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.kind == FindingKind::received_not_invoiced);
  CHECK(finding.quantity == 2);
  CHECK(finding.ours == 5);
  CHECK(finding.theirs == 3);
  CHECK(finding.money == cents(-20000));
  CHECK(finding.since == today - days{31});
  CHECK(finding.cause == Cause::not_recorded);
  CHECK(finding.remedy == Remedy::ask_invoice);
  CHECK(finding.reference == "PO-1");
  CHECK(match_suppliers(clinic, today - days{1}).findings.empty());
}

TEST_CASE("what came after the invoice is a second delivery") {
  auto clinic = books_made();
  auto& order = add_order(clinic, "PO-1", 5, 100);
  order.received_on = today - days{50};
  add_invoice(clinic, "INV-1", "PO-1", 3, 88);
  CHECK(only_finding(match_suppliers(clinic, today)).cause == Cause::second_delivery);
}

TEST_CASE("more invoiced than received") {
  auto clinic = books_made();
  add_order(clinic, "PO-1", 2, 100);
  add_invoice(clinic, "INV-1", "PO-1", 4, 88, 9800);
  clinic.order_lines.front().unit_cost = cents(9800);
  const auto finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.kind == FindingKind::invoiced_not_received);
  CHECK(finding.quantity == 2);
  CHECK(finding.ours == 2);
  CHECK(finding.theirs == 4);
  CHECK(finding.money == cents(-19600));
  CHECK(finding.cause == Cause::not_recorded);
  CHECK(finding.remedy == Remedy::record_receipt);
  CHECK(finding.since == today - days{88});
}

TEST_CASE("pieces that are on order are missed some days after their invoice") {
  auto clinic = books_made();
  auto& order = add_order(clinic, "PO-1", 5, 40);
  order.received_quantity = 3;
  add_invoice(clinic, "INV-1", "PO-1", 5, 15);
  const auto finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.kind == FindingKind::invoiced_not_received);
  CHECK(finding.quantity == 2);
  CHECK(finding.cause == Cause::short_delivery);
  CHECK(finding.remedy == Remedy::ask_supplier);
  CHECK(match_suppliers(clinic, today - days{1}).findings.empty());
  auto& waiting = clinic.order_lines.front();
  waiting.received_quantity = 0;
  waiting.received_on.reset();
  CHECK(only_finding(match_suppliers(clinic, today)).cause == Cause::still_on_its_way);
}

TEST_CASE("what came of a cancelled order counts, and what did not come does not") {
  auto clinic = books_made();
  auto& order = add_order(clinic, "PO-1", 5, 100);
  order.received_quantity = 3;
  order.state = OrderState::cancelled;
  add_invoice(clinic, "INV-1", "PO-1", 5, 88);
  const auto finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.kind == FindingKind::invoiced_not_received);
  CHECK(finding.quantity == 2);
  clinic.order_lines.front().state = OrderState::draft;
  clinic.order_lines.front().received_quantity = 0;
  CHECK(only_finding(match_suppliers(clinic, today)).quantity == 5);
}

TEST_CASE("the later of two alike invoices is the second one, beyond what was received") {
  auto clinic = books_made();
  add_order(clinic, "PO-1", 5, 100);
  add_invoice(clinic, "INV-1", "PO-1", 2, 88);
  add_invoice(clinic, "INV-2", "PO-1", 2, 80);
  add_invoice(clinic, "INV-3", "PO-1", 3, 70);
  const auto finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.kind == FindingKind::invoiced_twice);
  CHECK(finding.reference == "INV-2");
  CHECK(finding.other == "INV-1");
  CHECK(finding.quantity == 2);
  CHECK(finding.money == cents(-20000));
  CHECK(finding.evidence.invoice_lines == std::vector<std::size_t>{1, 0});
  // Two deliveries of two pieces with an invoice each are none.
  clinic.order_lines.front().quantity = clinic.order_lines.front().received_quantity = 7;
  CHECK(match_suppliers(clinic, today).findings.empty());
}

TEST_CASE("prices are compared to the cent with their likely cause") {
  auto clinic = books_made();
  clinic.items.front().unit_cost = cents(10500);
  clinic.items.front().price_breaks = {{1, cents(10500)}, {5, cents(10000)}, {20, cents(9500)}};
  add_order(clinic, "PO-1", 6, 100);
  auto& invoice = add_invoice(clinic, "INV-1", "PO-1", 6, 88, 10001);
  auto finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.kind == FindingKind::price_differs);
  CHECK(finding.quantity == 6);
  CHECK(finding.money == cents(-6));
  CHECK(finding.our_amount == cents(10000));
  CHECK(finding.their_amount == cents(10001));
  CHECK(finding.cause == Cause::unknown);
  invoice.unit_cost = cents(10500);
  finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.cause == Cause::price_break_missed);
  CHECK(finding.money == cents(-3000));
  clinic.order_lines.front().unit_cost = cents(9700);
  clinic.invoice_lines.front().unit_cost = cents(10000);
  CHECK(only_finding(match_suppliers(clinic, today)).cause == Cause::price_list_changed);
  clinic.invoice_lines.front().unit_cost = cents(9000);
  finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.cause == Cause::unknown);
  CHECK(finding.money == cents(4200));
}

TEST_CASE("two currencies are compared and never subtracted") {
  auto clinic = books_made();
  add_order(clinic, "PO-1", 2, 100);
  add_invoice(clinic, "INV-1", "PO-1", 2, 88).unit_cost = Money{10000, Currency{"USD"}};
  const auto finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.kind == FindingKind::price_differs);
  CHECK_FALSE(finding.money.has_value());
}

TEST_CASE("a price that nobody wrote down is neither right nor wrong") {
  auto clinic = books_made();
  add_order(clinic, "PO-1", 2, 100).unit_cost.reset();
  add_invoice(clinic, "INV-1", "PO-1", 3, 88).unit_cost.reset();
  const auto finding = only_finding(match_suppliers(clinic, today));
  CHECK(finding.kind == FindingKind::invoiced_not_received);
  CHECK_FALSE(finding.money.has_value());
}

TEST_CASE("a surplus on one order is not what is missing on another, unless it is the same") {
  auto clinic = books_made();
  add_order(clinic, "PO-1", 2, 100);
  add_order(clinic, "PO-2", 3, 90);
  add_invoice(clinic, "INV-1", "PO-1", 4, 79);
  const auto findings = match_suppliers(clinic, today).findings;
  REQUIRE(findings.size() == 2);
  CHECK(findings[0].kind == FindingKind::received_not_invoiced);
  CHECK(findings[0].quantity == 3);
  CHECK(findings[1].kind == FindingKind::invoiced_not_received);
  CHECK(findings[1].quantity == 2);
  clinic.invoice_lines.front().quantity = 5;
  CHECK(match_suppliers(clinic, today).findings.empty());
}

TEST_CASE("records in another order give the same findings") {
  auto clinic = books_made();
  for (int i = 0; i < 12; ++i) {
    const std::string number = std::to_string(i);
    add_order(clinic, "PO-" + number, 2 + i % 3, 400 - 20 * i);
    if (i == 4) continue;
    add_invoice(clinic, "INV-" + number, i % 4 == 0 ? std::string{} : "PO-" + number,
                2 + i % 3 + (i == 7 ? 1 : 0), 388 - 20 * i, i == 9 ? 10100 : 10000);
  }
  add_invoice(clinic, "INV-2b", "PO-2", 4, 300);
  const auto keys = [](const Clinic& of) {
    std::vector<std::pair<std::string, int>> list;
    for (const auto& finding : match_suppliers(of, today).findings) {
      list.emplace_back(finding.key, finding.quantity);
    }
    return list;
  };
  const auto expected = keys(clinic);
  CHECK(expected.size() >= 3);
  for (int turn = 1; turn < 12; ++turn) {
    std::ranges::rotate(clinic.order_lines, clinic.order_lines.begin() + 5);
    std::ranges::rotate(clinic.invoice_lines, clinic.invoice_lines.begin() + 7);
    CHECK(keys(clinic) == expected);
  }
}

}  // namespace supplier_match_test
