#include "billing/pairing.hpp"

#include <algorithm>
#include <array>
#include <numeric>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "billing/books_made.hpp"
#include "billing/money_shares.hpp"

namespace pairing_test {

using namespace sparewell;
using namespace sparewell::billing;

namespace {

const Date day = make_date(2026, 5, 4);

/// Some issues and lines of one patient.
struct Table {
  std::vector<Issue> issues;
  std::vector<ClaimLine> lines;
  std::vector<Billed> billed;
  Clinic clinic = test::make_books(1, {}).clinic;
  CodeTable codes = test::test_codes();
  RuleBook rules = test::test_rules();

  void hand(const std::string& code, Date on, int quantity, Side side = Side::left) {
    const Kind kind = code == "L8420" ? Kind::sock : Kind::liner;
    Issue issue{{code}, code, kind, side, on, Standing::expected, {}};
    for (int i = 0; i < quantity; ++i)
      issue.units.push_back(issues.size() * 100 + issue.units.size());
    issues.push_back(std::move(issue));
  }
  void bill(const std::string& code, Date on, int quantity, std::optional<Side> side = Side::left) {
    ClaimLine line;
    line.code = code;
    line.service_date = on;
    line.quantity = quantity;
    line.side = side;
    lines.push_back(std::move(line));
  }
  std::vector<Pieces> paired() {
    billed.clear();
    for (const auto& line : lines) {
      billed.push_back({billed.size(), &line, line.side, line.quantity, {}, false});
    }
    return pair_pieces(issues, billed, CodeLikeness{clinic, codes, rules});
  }
};

std::int64_t cost_of(const Table& table, const std::vector<Pieces>& pieces) {
  const CodeLikeness likeness{table.clinic, table.codes, table.rules};
  std::int64_t cost = 0;
  for (const auto& issue : table.issues) {
    cost += cost_alone_of(issue) * static_cast<std::int64_t>(issue.units.size());
  }
  for (const auto& billed : table.billed) cost += cost_alone_of(billed) * billed.quantity;
  for (const auto& each : pieces) {
    const Issue& issue = table.issues[each.issue];
    const Billed& billed = table.billed[each.billed];
    cost += each.quantity *
            (likely(issue, billed, likeness)->cost - cost_alone_of(issue) - cost_alone_of(billed));
  }
  return cost;
}

/// The least cost over all ways to pair single pieces, one after the other.
class AllWays {
 public:
  explicit AllWays(const Table& table)
      : table_{table}, likeness_{table.clinic, table.codes, table.rules} {
    for (std::size_t i = 0; i < table.issues.size(); ++i) {
      units_.insert(units_.end(), table.issues[i].units.size(), i);
    }
    for (const auto& billed : table.billed) left_.push_back(billed.quantity);
  }

  std::int64_t least(std::size_t unit = 0) {
    if (unit == units_.size()) {
      std::int64_t alone = 0;
      for (std::size_t j = 0; j < left_.size(); ++j) {
        alone += cost_alone_of(table_.billed[j]) * left_[j];
      }
      return alone;
    }
    const Issue& issue = table_.issues[units_[unit]];
    std::int64_t best = cost_alone_of(issue) + least(unit + 1);
    for (std::size_t j = 0; j < left_.size(); ++j) {
      const auto found = likely(issue, table_.billed[j], likeness_);
      if (!found || left_[j] == 0) continue;
      --left_[j];
      best = std::min(best, found->cost + least(unit + 1));
      ++left_[j];
    }
    return best;
  }

 private:
  const Table& table_;
  CodeLikeness likeness_;
  std::vector<std::size_t> units_;
  std::vector<int> left_;
};

Table small_table(std::uint64_t seed) {
  test::Dice dice{seed};
  constexpr std::array codes{"L5673", "L5679", "L8420"};
  Table table;
  const auto side = [&] { return dice.chance(75) ? Side::left : Side::right; };
  for (int pieces = 0; pieces < 5;) {
    const int quantity = dice.whole(1, 2);
    pieces += quantity;
    table.hand(codes[static_cast<std::size_t>(dice.whole(0, 2))], day + days{dice.whole(0, 60)},
               quantity, side());
  }
  for (int pieces = 0; pieces < 5;) {
    const int quantity = dice.whole(1, 3);
    pieces += quantity;
    const auto stated = dice.chance(80) ? std::optional{side()} : std::nullopt;
    table.bill(codes[static_cast<std::size_t>(dice.whole(0, 2))], day + days{dice.whole(0, 60)},
               quantity, stated);
  }
  return table;
}

}  // namespace

TEST_CASE("no way to pair the pieces costs less than the flow's") {
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    auto table = small_table(seed);
    const auto pieces = table.paired();
    CHECK_MESSAGE(cost_of(table, pieces) == AllWays{table}.least(), "seed ", seed);
  }
}

TEST_CASE("one issue may be billed on two lines, and two issues on one") {
  Table split;
  split.hand("L8420", day, 6);
  split.bill("L8420", day, 4);
  split.bill("L8420", day, 2);
  const auto pieces = split.paired();
  REQUIRE(pieces.size() == 2);
  CHECK(pieces[0].quantity + pieces[1].quantity == 6);

  Table joined;
  joined.hand("L8420", day, 4);
  joined.hand("L8420", day + days{1}, 2);
  joined.bill("L8420", day, 6);
  CHECK(joined.paired().size() == 2);
}

TEST_CASE("whole lines go before split ones") {
  Table table;
  table.hand("L8420", day, 2);
  table.hand("L8420", day, 4);
  table.bill("L8420", day, 4);
  table.bill("L8420", day, 2);
  const auto pieces = table.paired();
  REQUIRE(pieces.size() == 2);
  CHECK(pieces[0].billed == 1);
  CHECK(pieces[1].billed == 0);
}

TEST_CASE("a line left out in a row does not move the others along") {
  Table table;
  for (const int at : {0, 30, 60, 90}) table.hand("L8420", day + days{at}, 1);
  for (const int at : {30, 60, 90, 120}) table.bill("L8420", day + days{at}, 1);
  int exact = 0;
  for (const auto& each : table.paired()) exact += each.agreement == Agreement::exact ? 1 : 0;
  CHECK(exact == 3);
}

TEST_CASE("a worse agreement is taken only where a better one is missing") {
  const auto agreement = [](const std::string& code, int apart, std::optional<Side> side) {
    Table table;
    table.hand("L5673", day, 1);
    table.bill(code, day + days{apart}, 1, side);
    const auto pieces = table.paired();
    return pieces.empty() ? std::optional<Agreement>{} : pieces.front().agreement;
  };
  CHECK(agreement("L5673", 0, Side::left) == Agreement::exact);
  CHECK(agreement("L5673", 14, Side::left) == Agreement::days_apart);
  CHECK(agreement("L5683", 0, Side::left) == Agreement::initial_code);
  CHECK(agreement("L5673", 0, std::nullopt) == Agreement::side_missing);
  CHECK(agreement("L5673", 3, Side::right) == Agreement::side_differs);
  CHECK(agreement("L5679", 3, Side::left) == Agreement::code_differs);
  CHECK(agreement("TYPED", 3, Side::left) == Agreement::code_unknown);
  CHECK(agreement("L5673", 15, Side::left) == Agreement::far_apart);
  CHECK(agreement("L5673", 45, Side::left) == Agreement::far_apart);
  // Two findings: too far, two things wrong at once, or nothing in common.
  CHECK(!agreement("L5673", 46, Side::left));
  CHECK(!agreement("L5673", 15, Side::right));
  CHECK(!agreement("L5679", 3, Side::right));
  CHECK(!agreement("L8420", 0, Side::left));
  CHECK(!agreement("TYPED", 4, Side::left));
}

TEST_CASE("shares add up to the cent") {
  // 100 over 3 pieces: 34, 33, 33 (largest remainder, earlier ones first; by hand).
  const std::array thirds{1, 1, 1};
  CHECK(shares(100, thirds) == std::vector<std::int64_t>{34, 33, 33});
  CHECK(shares(-100, thirds) == std::vector<std::int64_t>{-34, -33, -33});
  // 10 in proportion 1 : 2 : 4 is 1.43, 2.86, 5.71; remainders .43, .86, .71 (by hand).
  const std::array parts{1, 2, 4};
  CHECK(shares(10, parts) == std::vector<std::int64_t>{1, 3, 6});
  const std::array none{0, 0};
  CHECK(shares(7, none) == std::vector<std::int64_t>{7, 0});
  test::Dice dice{5};
  for (int i = 0; i < 200; ++i) {
    std::vector<int> any;
    for (int k = dice.whole(1, 6); k > 0; --k) any.push_back(dice.whole(0, 12));
    const std::int64_t total = dice.whole(-100000, 100000);
    const auto made = shares(total, any);
    CHECK(std::accumulate(made.begin(), made.end(), std::int64_t{0}) == total);
  }
}

}  // namespace pairing_test
