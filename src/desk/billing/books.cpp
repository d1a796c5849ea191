#include "desk/billing/books.hpp"

#include <iterator>

#include "billing/credits.hpp"
#include "billing/warranty.hpp"
#include "desk/billing/code_tables.hpp"
#include "desk/billing/wear_ages.hpp"

namespace sparewell::desk {
namespace {

void append(std::vector<billing::BillingFinding>& to,
            const std::vector<billing::BillingFinding>& more) {
  to.insert(to.end(), more.begin(), more.end());
}

}  // namespace

Books compare_books(const Clinic& clinic, Date today) {
  const auto codes = code_table_of(clinic);
  const auto rules = rule_book_of(clinic);
  Books books;
  books.claims = billing::reconcile_claims(clinic, codes, rules, today);
  books.payments = billing::reconcile_payments(clinic, rules, today);
  books.suppliers = billing::match_suppliers(clinic, today);
  auto findings = books.claims.findings;
  append(findings, books.payments.findings);
  append(findings, books.suppliers.findings);
  append(findings, billing::credit_findings(clinic, today));
  append(findings, billing::warranty_findings(clinic, today, wear_ages_of(clinic, today)));
  billing::sort_findings(findings);
  books.items = billing::make_worklist(std::move(findings), clinic.billing_answers, today);
  return books;
}

}  // namespace sparewell::desk
