// What the books of suppliers of the sample clinic say, beside what was planted in them.
#include <doctest/doctest.h>

#include "billing/credits.hpp"
#include "billing/warranty.hpp"
#include "desk/billing/finding_words.hpp"
#include "desk/billing/wear_ages.hpp"
#include "desk/sample_books.hpp"

namespace billing_suppliers_test {

using namespace sparewell;
using namespace sparewell::test;

namespace {

/// Finding and order of the rows of planted.csv about invoices. Their words hold no commas but in
/// quotes, and the orders' references none.
std::multiset<std::pair<std::string, std::string>> planted_in_invoices() {
  std::ifstream file{SPAREWELL_SOURCE_DIR "/sample-data/planted.csv"};
  std::multiset<std::pair<std::string, std::string>> made;
  for (std::string line; std::getline(file, line);) {
    const auto at = line.find(",invoices.csv,");
    if (at == std::string::npos) continue;
    auto what = line.substr(0, at);
    std::erase(what, '"');
    const auto from = at + std::string{",invoices.csv,"}.size();
    made.emplace(what, line.substr(from, line.find(',', from) - from));
  }
  return made;
}

}  // namespace

TEST_CASE("every error planted in the sample's invoices is found, and nothing else") {
  const auto& clinic = sample_clinic();
  std::multiset<std::pair<std::string, std::string>> found;
  for (const auto& finding : sample_books().suppliers.findings) {
    // Of an invoice that is there twice `other` is the first one, and the order stands in the line.
    auto order = finding.other;
    if (finding.kind == billing::FindingKind::received_not_invoiced) order = finding.reference;
    if (finding.kind == billing::FindingKind::invoiced_twice) {
      order = clinic.invoice_lines[finding.evidence.invoice_lines.front()].order_ref;
    }
    found.emplace(billing::finding_word(finding.kind), order);
  }
  CHECK(found == planted_in_invoices());
  CHECK(found.size() == 6);
}

TEST_CASE("every invoiced piece of the sample is an ordered one, or a finding") {
  const auto& clinic = sample_clinic();
  int invoiced = 0;
  for (const auto& line : clinic.invoice_lines) invoiced += line.quantity;
  int paired = 0;
  for (const auto& pair : sample_books().suppliers.pairs) paired += pair.quantity;
  int apart = 0;
  for (const auto& finding : sample_books().suppliers.findings) {
    const bool is_beyond = finding.kind == billing::FindingKind::invoiced_not_received ||
                           finding.kind == billing::FindingKind::invoiced_twice;
    if (is_beyond) apart += finding.quantity;
  }
  CHECK(invoiced == paired + apart);
}

TEST_CASE("warranty findings of the sample are the wear endings within the term of the last year") {
  const auto& clinic = sample_clinic();
  const ClinicIndex index{clinic};
  const auto ages = desk::wear_ages_of(clinic, import_day());
  std::size_t expected = 0;
  for (const auto& unit : clinic.units) {
    const auto* item = index.item(unit.item);
    if (!unit.ended_on || !is_wear(*unit.end_reason) || !item->warranty_days) continue;
    expected += days_between(unit.issued_on, *unit.ended_on) <= *item->warranty_days &&
                days_between(*unit.ended_on, import_day()) <= 365;
  }
  const auto findings = billing::warranty_findings(clinic, import_day(), ages);
  CHECK(findings.size() == expected);
  CHECK(expected > 5);
  for (const auto& finding : findings) {
    REQUIRE(finding.wear_age.has_value());
    CHECK(*finding.wear_age > 0);
    CHECK(finding.ours <= finding.theirs);
    CHECK(desk::finding_sentence(finding).find("days of usual use") != std::string::npos);
  }
}

}  // namespace billing_suppliers_test
