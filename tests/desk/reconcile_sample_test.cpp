#include <doctest/doctest.h>
#include <fmt/format.h>
#include "billing/reconcile_claims.hpp"
#include "desk/billing/code_tables.hpp"
#include "desk/sample_books.hpp"

using namespace sparewell;

TEST_CASE("print") {
  const auto& clinic = test::sample_clinic();
  const auto books = billing::reconcile_claims(clinic, desk::code_table_of(clinic), desk::rule_book_of(clinic), test::import_day());
  for (const auto& f : books.findings) fmt::print("{} | {} x{} ours {} theirs {} money {} cause {} item {} other {}\n", f.key, f.reference, f.quantity, f.ours, f.theirs, f.money?text(*f.money):"?", int(f.cause), f.item.text, f.other);
  for (const auto& t : books.totals) fmt::print("{} charged {} repl {} rev {} before {} paired {} alone {} \n", t.currency.code, t.charged,t.replaced,t.reversed,t.before_books,t.paired,t.alone);
  fmt::print("{} pairs {} left\n", books.pairs.size(), books.leftovers.size());
}
