#include "billing/net_claims.hpp"

#include <doctest/doctest.h>

#include "billing/books_made.hpp"

namespace net_claims_test {

using namespace sparewell;
using namespace sparewell::billing;
using test::cents;

namespace {

const Date day = make_date(2026, 5, 4);

/// Lines of one patient, and what stands of them.
struct Lines {
  Clinic clinic;

  ClaimLine& add(const std::string& claim, int quantity, std::optional<std::int64_t> charge,
                 Submission submission = Submission::original, const std::string& replaces = "") {
    ClaimLine line;
    line.claim_ref = claim;
    line.patient = {"P-1"};
    line.side = Side::left;
    line.service_date = day;
    line.code = "L8420";
    line.quantity = quantity;
    if (charge) line.charge = cents(*charge);
    line.submission = submission;
    line.replaces = replaces;
    clinic.claim_lines.push_back(line);
    return clinic.claim_lines.back();
  }
  [[nodiscard]] NetClaims net() const {
    std::vector<std::size_t> all;
    for (std::size_t i = 0; i < clinic.claim_lines.size(); ++i) all.push_back(i);
    return net_claims(clinic, all);
  }
};

}  // namespace

TEST_CASE("a reversal takes its line back, by submission or by a charge below zero") {
  for (const bool by_charge : {false, true}) {
    Lines lines;
    lines.add("A", 6, 600);
    lines.add("A", 6, by_charge ? -600 : 600,
              by_charge ? Submission::original : Submission::reversal);
    const auto net = lines.net();
    CHECK(net.live.empty());
    CHECK(net.loose.empty());
    CHECK(net.amounts.at(test::euro).charged == 600);
    CHECK(net.amounts.at(test::euro).reversed == 600);
  }
}

TEST_CASE("a partial reversal leaves the rest") {
  Lines lines;
  lines.add("A", 6, 601);
  lines.add("A", 2, std::nullopt, Submission::reversal);  // a third of 601 is 200.33
  const auto net = lines.net();
  REQUIRE(net.live.size() == 1);
  CHECK(net.live.front().quantity == 4);
  CHECK(net.live.front().charge == cents(401));
}

TEST_CASE("a reversal looks for the line of its own quantity first") {
  Lines lines;
  lines.add("A", 4, 400);
  lines.add("A", 2, 200);
  lines.add("B", 2, 200, Submission::reversal, "A");
  const auto net = lines.net();
  REQUIRE(net.live.size() == 1);
  CHECK(net.live.front().line == 0);
}

TEST_CASE("a reversal under a reference of its own finds the line of the same amount") {
  Lines lines;
  lines.add("A", 2, 200);
  lines.add("Z", 2, -200);
  CHECK(lines.net().live.empty());
  lines.clinic.claim_lines.back().charge = cents(-150);
  CHECK(lines.net().loose.size() == 1);
}

TEST_CASE("what a reversal takes back beyond what was billed is loose") {
  Lines lines;
  lines.add("A", 2, 200);
  lines.add("A", 3, 300, Submission::reversal);
  auto net = lines.net();
  REQUIRE(net.loose.size() == 1);
  CHECK(net.loose.front().quantity == 1);
  CHECK(net.loose.front().money == cents(100));

  Lines amount;  // all pieces, another amount
  amount.add("A", 2, 200);
  amount.add("A", 2, 180, Submission::reversal);
  net = amount.net();
  REQUIRE(net.loose.size() == 1);
  CHECK(net.loose.front().quantity == 0);
  CHECK(net.loose.front().money == cents(-20));
  REQUIRE(net.live.size() == 1);
  CHECK(net.live.front().quantity == 0);
}

TEST_CASE("a reversal of another code, side or day takes nothing back") {
  for (int differs = 0; differs < 3; ++differs) {
    Lines lines;
    lines.add("A", 2, 200);
    auto& back = lines.add("A", 2, 200, Submission::reversal);
    if (differs == 0) back.code = "L8430";
    if (differs == 1) back.side = Side::right;
    if (differs == 2) back.service_date += days{1};
    const auto net = lines.net();
    CHECK(net.live.size() == 1);
    CHECK(net.loose.size() == 1);
  }
}

TEST_CASE("a replacement stands in place of the whole claim") {
  Lines lines;
  lines.add("A", 2, 200);
  lines.add("A", 6, 600).code = "L8430";
  lines.add("B", 2, 210, Submission::replacement, "A");
  const auto net = lines.net();
  REQUIRE(net.live.size() == 1);
  CHECK(net.live.front().line == 2);
  CHECK(net.amounts.at(test::euro).replaced == 800);
  // Of a chain the last stands; under its own reference it replaces the original lines.
  lines.add("C", 2, 220, Submission::replacement, "B");
  CHECK(lines.net().live.size() == 1);
  Lines own;
  own.add("A", 2, 200);
  own.add("A", 3, 300, Submission::replacement);
  REQUIRE(own.net().live.size() == 1);
  CHECK(own.net().live.front().quantity == 3);
}

TEST_CASE("claims that replace one another do not all vanish") {
  Lines lines;
  lines.add("A", 2, 200, Submission::replacement, "B");
  lines.add("B", 2, 210, Submission::replacement, "A");
  CHECK(lines.net().live.size() == 1);
}

TEST_CASE("a claim that is reversed and replaced is taken back once") {
  Lines lines;
  lines.add("A", 2, 200);
  lines.add("B", 2, 210, Submission::replacement, "A");
  lines.add("V", 2, 200, Submission::reversal, "A");
  const auto net = lines.net();
  CHECK(net.live.size() == 1);
  CHECK(net.loose.empty());
  CHECK(net.amounts.at(test::euro).charged == 410);
}

}  // namespace net_claims_test
