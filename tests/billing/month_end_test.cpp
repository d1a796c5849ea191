// The books of a month and what changes after they are closed; counted by hand.
#include "billing/month_end.hpp"

#include <doctest/doctest.h>

#include "billing/small_supplier_books.hpp"

namespace month_end_test {

using namespace sparewell;
using namespace sparewell::billing;
using namespace sparewell::billing::testing;

namespace {

const Date october = make_date(2026, 10, 1);

Unit issued(Date on, int copy = 1) {
  Unit unit;
  unit.patient = {"P-1"};
  unit.item = {"L1"};
  unit.issued_on = on;
  unit.copy = copy;
  return unit;
}

ClaimLine claimed(Date on, std::optional<Money> charge) {
  ClaimLine line;
  line.claim_ref = "CL-1";
  line.patient = {"P-1"};
  line.service_date = on;
  line.code = "L5673";
  line.quantity = 2;
  line.charge = charge;
  return line;
}

/// October has two parts, two claim lines (one without a charge), an invoice with freight, a
/// receipt and a payment; each kind has a record of another month too.
Clinic clinic_of_october() {
  auto clinic = books_made();
  clinic.units = {issued(october), issued(make_date(2026, 10, 31)), issued(make_date(2026, 11, 1)),
                  issued(make_date(2026, 9, 30))};
  clinic.claim_lines = {claimed(october, cents(30000)), claimed(october + days{3}, std::nullopt),
                        claimed(make_date(2026, 11, 1), cents(99))};
  add_order(clinic, "PO-1", 3, 60, 9900).received_on = october + days{9};
  add_order(clinic, "PO-2", 3, 20);
  add_invoice(clinic, "INV-1", "PO-1", 3, 0, 9900).invoiced_on = october + days{12};
  clinic.invoice_lines.back().freight = cents(1800);
  add_invoice(clinic, "INV-2", "PO-2", 3, 5);
  clinic.remittances.push_back({"Example Payer", "R-1", october + days{20}, cents(25000), ""});
  RemittanceLine paid;
  paid.payer = "Example Payer";
  paid.reference = "R-1";
  paid.claim_ref = "CL-1";
  paid.code = "L5673";
  paid.quantity = 2;
  paid.paid = cents(25000);
  clinic.remittance_lines.push_back(paid);
  return clinic;
}

const EntryTotal* total_of(const EntryTotals& totals, BookEntry entry) {
  for (const auto& total : totals.totals) {
    if (total.entry == entry) return &total;
  }
  return nullptr;
}

}  // namespace

TEST_CASE("months begin on their first day") {
  CHECK(month_of(make_date(2026, 10, 31)) == october);
  CHECK(month_after(make_date(2026, 12, 1)) == make_date(2027, 1, 1));
}

TEST_CASE("a month holds the records of its days, and its totals are their sums") {
  const auto entries = book_entries(clinic_of_october(), october);
  CHECK(entries.size() == 8);
  const auto totals = totals_of(entries);
  CHECK(total_of(totals, BookEntry::part)->sum == cents(20000));
  CHECK(total_of(totals, BookEntry::part)->quantity == 2);
  CHECK(total_of(totals, BookEntry::claim)->sum == cents(30000));
  CHECK(total_of(totals, BookEntry::claim)->records == 1);
  CHECK(totals.without_amount.at(BookEntry::claim) == 1);
  CHECK(total_of(totals, BookEntry::invoice)->sum == cents(29700 + 1800));
  CHECK(total_of(totals, BookEntry::invoice)->quantity == 3);
  CHECK(total_of(totals, BookEntry::receipt)->sum == cents(29700));
  CHECK(total_of(totals, BookEntry::payment)->sum == cents(25000));
}

TEST_CASE("records that are alike have keys of their own") {
  auto clinic = clinic_of_october();
  clinic.remittance_lines.push_back(clinic.remittance_lines.back());
  const auto entries = book_entries(clinic, october);
  REQUIRE(entries.size() == 9);
  CHECK(entries[8].key == entries[7].key + " (2)");
}

TEST_CASE("nothing has changed in a month as it was closed, whatever came in other months") {
  auto clinic = clinic_of_october();
  const auto closed = book_entries(clinic, october);
  clinic.units.push_back(issued(make_date(2026, 11, 20)));
  std::ranges::reverse(clinic.units);
  std::ranges::reverse(clinic.claim_lines);
  const auto since = changes_since_close(closed, book_entries(clinic, october));
  CHECK(since.changes.empty());
  CHECK(since.revalued.empty());
}

TEST_CASE("what was added, taken away and changed after the close, with both sides") {
  auto clinic = clinic_of_october();
  const auto closed = book_entries(clinic, october);
  clinic.units.front().issued_on = make_date(2026, 11, 2);  // gone from October
  clinic.claim_lines.front().charge = cents(31000);
  clinic.invoice_lines.front().quantity = 2;
  clinic.claim_lines.push_back(claimed(october + days{5}, cents(500)));
  const auto made = changes_since_close(closed, book_entries(clinic, october));
  REQUIRE(made.changes.size() == 4);
  CHECK(made.changes[0].before.has_value());
  CHECK_FALSE(made.changes[0].after.has_value());
  CHECK(made.changes[0].difference() == cents(-10000));
  CHECK(made.changes[1].difference() == cents(1000));
  CHECK_FALSE(made.changes[2].before.has_value());
  CHECK(made.changes[2].difference() == cents(500));
  CHECK(made.changes[3].before->quantity == 3);
  CHECK(made.changes[3].after->quantity == 2);
  CHECK(made.changes[3].difference() == cents(-9900));
}

TEST_CASE("a new catalogue price revalues parts and changes no book") {
  auto clinic = clinic_of_october();
  const auto closed = book_entries(clinic, october);
  clinic.items.front().unit_cost = cents(11000);
  const auto made = changes_since_close(closed, book_entries(clinic, october));
  CHECK(made.changes.empty());
  REQUIRE(made.revalued.size() == 2);
  CHECK(made.revalued.front().difference() == cents(1000));
}

TEST_CASE("a charge that became known has no difference to what nobody knew") {
  auto clinic = clinic_of_october();
  const auto closed = book_entries(clinic, october);
  clinic.claim_lines[1].charge = cents(700);
  const auto made = changes_since_close(closed, book_entries(clinic, october));
  REQUIRE(made.changes.size() == 1);
  CHECK_FALSE(made.changes.front().difference().has_value());
}

}  // namespace month_end_test
