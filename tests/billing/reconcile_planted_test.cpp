// Books with planted errors: each is found, and nothing else.
#include <algorithm>
#include <cstdlib>
#include <set>
#include <string>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "billing/books_made.hpp"
#include "billing/reconcile_claims.hpp"

namespace reconcile_planted_test {

using namespace sparewell;
using namespace sparewell::billing;
using test::PlantedError;

namespace {

constexpr int patients = 2 * test::sorts_of_errors;

ClaimBooks reconciled(const Clinic& clinic) {
  static const auto codes = test::test_codes();
  static const auto rules = test::test_rules();
  return reconcile_claims(clinic, codes, rules, test::books_today);
}

std::vector<PlantedError> found_in(const ClaimBooks& books) {
  std::vector<PlantedError> found;
  for (const auto& each : books.findings) {
    std::optional<std::int64_t> money;
    if (each.money) money = each.money->minor;
    found.push_back({each.kind, each.patient, each.code, each.quantity, money});
  }
  std::ranges::sort(found);
  return found;
}

std::string words_of(const PlantedError& error) {
  return fmt::format("{} {} {} x{} {}", finding_word(error.kind), error.patient.text, error.code,
                     error.quantity, error.cents ? std::to_string(*error.cents) : "?");
}

/// The wanted ones that are missing and the found ones that are too many, in words.
std::string differences(const std::vector<PlantedError>& planted,
                        const std::vector<PlantedError>& found) {
  std::string said;
  std::vector<PlantedError> one_side;
  std::ranges::set_difference(planted, found, std::back_inserter(one_side));
  for (const auto& each : one_side) said += fmt::format("not found: {}\n", words_of(each));
  one_side.clear();
  std::ranges::set_difference(found, planted, std::back_inserter(one_side));
  for (const auto& each : one_side) said += fmt::format("too much: {}\n", words_of(each));
  return said;
}

void check_totals(const ClaimBooks& books, const Clinic& clinic) {
  std::int64_t charged = 0;
  for (const auto& line : clinic.claim_lines) {
    if (line.charge && !line.takes_back()) charged += line.charge->minor;
  }
  REQUIRE(books.totals.size() == 1);
  const auto& total = books.totals.front();
  CHECK(total.charged == charged);
  CHECK(total.charged ==
        total.replaced + total.reversed + total.before_books + total.paired + total.alone);
  std::int64_t paired = 0;
  for (const auto& pair : books.pairs) paired += pair.money ? pair.money->minor : 0;
  CHECK(paired == total.paired);
  std::int64_t alone = 0;
  for (const auto& left : books.leftovers) alone += left.money ? left.money->minor : 0;
  CHECK(alone == total.alone);
}

std::vector<std::uint64_t> seeds() {
  std::vector<std::uint64_t> all;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) all.push_back(seed);
  if (const char* own = std::getenv("SPAREWELL_SEED")) all.push_back(std::stoull(own));
  return all;
}

/// What the results say, without positions.
std::vector<std::string> said_by(const ClaimBooks& books, const Clinic& clinic) {
  std::vector<std::string> said;
  for (const auto& each : books.findings) {
    said.push_back(fmt::format("{} {} {} {} {} {}", each.key, each.quantity, each.ours, each.theirs,
                               each.money ? text(*each.money) : "?", static_cast<int>(each.cause)));
  }
  for (const auto& pair : books.pairs) {
    const auto& line = clinic.claim_lines[pair.claim_line];
    std::string units;
    for (const auto unit : pair.units) units += clinic.units[unit].lot + " ";
    said.push_back(fmt::format("{} {} {} {} {} {} {}", line.claim_ref, line.patient.text,
                               iso_text(line.service_date), line.code, line.copy, units,
                               pair.money ? text(*pair.money) : "?"));
  }
  return said;
}

}  // namespace

TEST_CASE("every planted error is found with its kind and money, and nothing else") {
  for (const auto seed : seeds()) {
    const auto made = test::make_books(seed, {patients});
    // One error a patient; one sort is two findings, one sort is none.
    REQUIRE(made.planted.size() == patients);
    const auto books = reconciled(made.clinic);
    const auto difference = differences(made.planted, found_in(books));
    CHECK_MESSAGE(difference.empty(), "seed ", seed, "\n", difference);
    check_totals(books, made.clinic);
  }
}

TEST_CASE("every kind of finding of the claims book is planted") {
  std::set<FindingKind> kinds;
  for (const auto& each : test::make_books(1, {patients}).planted) kinds.insert(each.kind);
  for (int kind = 0; book_of(static_cast<FindingKind>(kind)) == Book::claims; ++kind) {
    CHECK_MESSAGE(kinds.contains(static_cast<FindingKind>(kind)),
                  finding_word(static_cast<FindingKind>(kind)));
  }
}

TEST_CASE("the order of the records makes no difference") {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    auto made = test::make_books(seed, {patients});
    const auto before = said_by(reconciled(made.clinic), made.clinic);
    test::Dice dice{seed};
    dice.shuffle(made.clinic.units);
    dice.shuffle(made.clinic.claim_lines);
    dice.shuffle(made.clinic.patients);
    dice.shuffle(made.clinic.items);
    dice.shuffle(made.clinic.prostheses);
    dice.shuffle(made.clinic.part_papers);
    dice.shuffle(made.clinic.handovers);
    CHECK(said_by(reconciled(made.clinic), made.clinic) == before);
  }
}

}  // namespace reconcile_planted_test
