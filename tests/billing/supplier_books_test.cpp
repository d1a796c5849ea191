// Generated books of suppliers: every planted error is found, and nothing else. The books say
// themselves what is wrong in them, so that the expected findings come from their maker.
#include <cstdlib>
#include <set>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "billing/small_supplier_books.hpp"
#include "billing/supplier_books_made.hpp"

namespace supplier_books_test {

using namespace sparewell;
using namespace sparewell::billing;
using namespace sparewell::billing::testing;

namespace {

/// SPAREWELL_SEED tries other books.
std::uint64_t first_seed() {
  const char* chosen = std::getenv("SPAREWELL_SEED");
  return chosen == nullptr ? 1 : std::strtoull(chosen, nullptr, 10);
}

PlantedError said_by(const BillingFinding& finding) {
  return {finding.kind,      finding.supplier, finding.item,
          finding.reference, finding.quantity, finding.money ? finding.money->minor : 0};
}

std::string words_of(const PlantedError& error) {
  return fmt::format("{} {} {} {}: {} pieces, {} minor", finding_word(error.kind),
                     error.supplier.text, error.item.text, error.reference, error.quantity,
                     error.minor);
}

/// What the records say should have been invoiced, less what was: of goods, in one currency.
std::int64_t goods_apart(const Clinic& clinic, const Currency& currency) {
  std::int64_t sum = 0;
  for (const auto& line : clinic.order_lines) {
    if (line.unit_cost->currency == currency) sum += line.unit_cost->minor * line.received_quantity;
  }
  for (const auto& line : clinic.invoice_lines) {
    if (line.unit_cost->currency == currency) sum -= line.unit_cost->minor * line.quantity;
  }
  return sum;
}

}  // namespace

TEST_CASE("every planted error in the books of suppliers is found, and nothing else") {
  std::set<FindingKind> kinds;
  int planted = 0;
  int oddities = 0;
  for (std::uint64_t turn = 0; turn < 200; ++turn) {
    const std::uint64_t seed = first_seed() + turn;
    auto made = make_supplier_books(seed, today);
    const auto books = match_suppliers(made.clinic, today);
    std::vector<PlantedError> found;
    for (const auto& finding : books.findings) found.push_back(said_by(finding));
    std::ranges::sort(found);
    std::ranges::sort(made.planted);
    std::vector<PlantedError> missed;
    std::vector<PlantedError> beyond;
    std::ranges::set_difference(made.planted, found, std::back_inserter(missed));
    std::ranges::set_difference(found, made.planted, std::back_inserter(beyond));
    for (const auto& error : missed) FAIL_CHECK("seed ", seed, " missed: ", words_of(error));
    for (const auto& error : beyond) FAIL_CHECK("seed ", seed, " beyond: ", words_of(error));
    for (const auto& error : made.planted) kinds.insert(error.kind);
    planted += static_cast<int>(made.planted.size());
    oddities += made.oddities;
  }
  CHECK(kinds.size() == 5);
  CHECK(planted > 1000);
  CHECK(oddities > 1000);
}

// By arithmetic: received pieces at their ordered price - invoiced pieces at their price.
TEST_CASE("the money of the findings is the difference of the books, to the cent") {
  for (std::uint64_t seed = first_seed(); seed < first_seed() + 20; ++seed) {
    const auto made = make_supplier_books(seed, today);
    std::map<Currency, std::int64_t> found;
    for (const auto& finding : match_suppliers(made.clinic, today).findings) {
      if (finding.kind == FindingKind::freight_differs) continue;
      REQUIRE(finding.money.has_value());
      const bool is_uninvoiced = finding.kind == FindingKind::received_not_invoiced;
      found[finding.money->currency] += finding.money->minor * (is_uninvoiced ? -1 : 1);
    }
    for (const Currency& currency : {Currency{"EUR"}, Currency{"USD"}}) {
      CHECK_MESSAGE(found[currency] == goods_apart(made.clinic, currency), "seed ", seed);
    }
  }
}

}  // namespace supplier_books_test
