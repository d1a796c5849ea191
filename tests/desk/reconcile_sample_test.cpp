// The sample clinic's books: what sample-data/planted.csv says was planted is found, and what else
// is found is known why.
#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "billing/reconcile_claims.hpp"
#include "desk/billing/code_tables.hpp"
#include "desk/sample_books.hpp"
#include "exchange/csv_reader.hpp"

namespace reconcile_sample_test {

using namespace sparewell;
using billing::BillingFinding;

namespace {

struct Planted {
  std::string what;
  std::string patient;
  std::string detail;
};

/// The rows of planted.csv that are about claims.
std::vector<Planted> planted_rows() {
  const auto text =
      test::text_of(std::filesystem::path{SPAREWELL_SOURCE_DIR} / "sample-data" / "planted.csv");
  std::vector<Planted> rows;
  exchange::read_csv(text, ',', [&](const exchange::CsvRow& row) {
    const auto& cells = row.fields;
    if (cells[1] == "claims.csv" || cells[0] == "replaced early, no reason") {
      rows.push_back({cells[0], cells[2], cells[3]});
    }
    return true;
  });
  return rows;
}

billing::ClaimBooks sample_claims() {
  const auto& clinic = test::sample_clinic();
  return billing::reconcile_claims(clinic, desk::code_table_of(clinic), desk::rule_book_of(clinic),
                                   test::import_day());
}

/// Whether the finding is the one that the row tells of.
bool is_of(const BillingFinding& finding, const Planted& row) {
  const auto says = [&](const std::string& words) {
    return row.detail.find(words) != std::string::npos;
  };
  const std::string word{finding_word(finding.kind)};
  if (finding.patient.text != row.patient) return false;
  if (row.what == "replaced early, no reason") {
    return word == row.what && says(finding.other + " of ") &&
           says("ended " + iso_text(*finding.other_day));
  }
  if (word != (row.what == "duplicate line" ? "billed twice" : row.what)) return false;
  return says(iso_text(finding.since)) && (says(finding.code) || says(finding.reference + " of"));
}

}  // namespace

TEST_CASE("every error planted in the sample's claims is found once") {
  const auto books = sample_claims();
  const auto rows = planted_rows();
  CHECK(rows.size() == 14);
  std::set<std::string> explained;
  for (const auto& row : rows) {
    const auto is = [&](const BillingFinding& finding) { return is_of(finding, row); };
    CHECK_MESSAGE(std::ranges::count_if(books.findings, is) == 1, row.what, " ", row.detail);
    for (const auto& finding : books.findings) {
      if (is(finding)) explained.insert(finding.key);
    }
  }
  std::vector<std::string> more;
  for (const auto& finding : books.findings) {
    if (!explained.contains(finding.key)) more.push_back(finding.key);
  }
  // The third liner is still there when the others are replaced; and the maker of the sample ends a
  // quarter of the parts that go for another cause than wear with "other", which tells no reason.
  CHECK(more == std::vector<std::string>{"over the limit/P-0012/left/L5673/2026-02-12/at once",
                                         "over the limit/P-0012/left/L5673/2026-06-26/at once",
                                         "replaced early, no reason/P-0009/right/L5679/2026-06-29",
                                         "replaced early, no reason/P-0073/left/L8420/2026-01-30",
                                         "replaced early, no reason/P-0092/left/L8420/2024-11-28",
                                         "replaced early, no reason/P-0116/right/L8430/2024-03-26",
                                         "replaced early, no reason/P-0130/left/L5679/2024-05-06"});
}

TEST_CASE("the sample's money ties out to the cent") {
  const auto books = sample_claims();
  std::int64_t charged = 0;
  for (const auto& line : test::sample_clinic().claim_lines) {
    if (line.charge) charged += line.charge->minor;
  }
  REQUIRE(books.totals.size() == 1);
  const auto& total = books.totals.front();
  CHECK(total.charged == charged);
  CHECK(total.charged == total.paired + total.alone);
  // Two donning sleeves of 89.00, a second sleeve, and what was billed beyond what was handed out.
  CHECK(total.alone == 2 * 8900 + 8732 + 5268 + 8732);
}

}  // namespace reconcile_sample_test
