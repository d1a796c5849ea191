// Errors planted into books that agree are found, all of them and nothing else.
#include <map>
#include <set>

#include <doctest/doctest.h>

#include "made_payments.hpp"

namespace payment_seeds_test {

using namespace sparewell;
using namespace sparewell::billing;
using namespace sparewell::billing::testing;

namespace {

struct Planted {
  Clinic clinic;
  std::multiset<std::pair<FindingKind, std::string>> wanted;  ///< kind and claim
};

/// One error at most for a claim.
Planted planted(unsigned seed) {
  Planted made;
  auto& clinic = made.clinic;
  clinic = made_clinic(60, seed);
  std::mt19937 random{seed + 1000};
  std::map<std::string, std::vector<std::size_t>> by_claim;
  for (std::size_t i = 0; i < clinic.remittance_lines.size(); ++i) {
    by_claim[clinic.remittance_lines[i].claim_ref].push_back(i);
  }
  std::vector<RemittanceLine> more;
  std::set<std::size_t> gone;
  int number = 0;
  for (const auto& [claim, lines] : by_claim) {
    auto& line = clinic.remittance_lines[lines.front()];
    const auto later = fmt::format("LATER-{}", ++number);
    switch (random() % 10) {
      case 0:
        gone.insert(lines.begin(), lines.end());
        made.wanted.emplace(FindingKind::not_answered, claim);
        break;
      case 1:
        deny(line, "50");
        made.wanted.emplace(FindingKind::denied, claim);
        break;
      case 2:
        line.paid.minor -= 100;
        line.adjustments = {
            adjustment_text({"CO", "45", dollars(line.charge.minor - line.paid.minor), {}})};
        made.wanted.emplace(FindingKind::paid_differently, claim);
        break;
      case 3:
        more.push_back(line);
        more.back().reference = later;
        made.wanted.emplace(FindingKind::paid_without_claim, claim);
        break;
      case 4:
        line.claim_ref = "LOST";
        line.line_control.clear();
        line.patient = {};
        made.wanted.emplace(FindingKind::paid_without_claim, "LOST");
        made.wanted.emplace(FindingKind::not_answered, claim);
        break;
      case 5:
        more.push_back(reversal_of(line, later, 1));
        made.wanted.emplace(FindingKind::paid_differently, claim);
        break;
      case 6:  // taken back and paid anew: nothing to find
        more.push_back(reversal_of(line, later, 1));
        more.push_back(line);
        more.back().reference = later;
        more.back().position = 2;
        break;
      default:
        break;
    }
  }
  std::vector<RemittanceLine> kept;
  for (std::size_t i = 0; i < clinic.remittance_lines.size(); ++i) {
    if (!gone.contains(i)) kept.push_back(clinic.remittance_lines[i]);
  }
  clinic.remittance_lines = std::move(kept);
  std::set<std::string> paid;
  for (const auto& line : more) {
    clinic.remittance_lines.push_back(line);
    paid.insert(line.reference);
  }
  for (const auto& reference : paid) {
    add_payment(clinic, "Northfield Health", reference, made_today - days{2});
  }
  return made;
}

std::multiset<std::pair<FindingKind, std::string>> found_in(const PaymentBooks& books) {
  std::multiset<std::pair<FindingKind, std::string>> found;
  for (const auto& finding : books.findings) found.emplace(finding.kind, finding.reference);
  return found;
}

}  // namespace

TEST_CASE("planted errors are found, and nothing else") {
  for (unsigned seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    const auto made = planted(seed);
    const auto books = reconcile(made.clinic);
    CHECK(found_in(books) == made.wanted);
    std::set<std::string> keys;
    for (const auto& finding : books.findings) keys.insert(finding.key);
    CHECK(keys.size() == books.findings.size());
  }
}

TEST_CASE("the totals tie out to the cent, and every line is used once") {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    CAPTURE(seed);
    const auto made = planted(seed);
    const auto books = reconcile(made.clinic);
    REQUIRE(books.totals.size() == 1);
    const auto& totals = books.totals[0];
    CHECK(totals.paid == totals.of_claims + totals.without_claim + totals.by_provider);
    std::int64_t paid = 0;
    for (const auto& line : made.clinic.remittance_lines) paid += line.paid.minor;
    CHECK(totals.paid == paid);
    std::set<std::size_t> used;
    std::size_t uses = 0;
    const auto use = [&](const std::vector<std::size_t>& lines) {
      used.insert(lines.begin(), lines.end());
      uses += lines.size();
    };
    for (const auto& lines : books.answers.standing) use(lines);
    for (const auto& lines : books.answers.taken_back) use(lines);
    use(books.answers.without_claim);
    use(books.answers.paid_again);
    CHECK(used.size() == uses);
  }
}

TEST_CASE("the order of the records does not matter") {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    CAPTURE(seed);
    auto made = planted(seed);
    std::map<std::string, std::optional<Money>> before;
    for (const auto& finding : reconcile(made.clinic).findings) before[finding.key] = finding.money;
    std::mt19937 random{seed};
    std::ranges::shuffle(made.clinic.claim_lines, random);
    std::ranges::shuffle(made.clinic.remittance_lines, random);
    std::ranges::shuffle(made.clinic.remittances, random);
    std::map<std::string, std::optional<Money>> after;
    for (const auto& finding : reconcile(made.clinic).findings) after[finding.key] = finding.money;
    CHECK(before == after);
  }
}

}  // namespace payment_seeds_test
