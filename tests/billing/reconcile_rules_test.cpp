// One rule at a time, on books made by hand.
#include <doctest/doctest.h>

#include "billing/small_books.hpp"

namespace reconcile_rules_test {

using namespace sparewell;
using namespace sparewell::billing;
using test::cents;
using test::SmallBooks;

namespace {

const Date day = make_date(2026, 5, 4);

}  // namespace

TEST_CASE("nothing is compared before the first service that was billed") {
  SmallBooks made;
  made.hand("LN", day - days{100});
  CHECK(made.findings().empty());  // no claims at all
  made.hand("LN", day);
  made.bill("L5673", day);
  CHECK(made.findings().empty());
  made.clinic.settings.billing_begins = day - days{100};
  CHECK(made.findings().size() == 1);
}

TEST_CASE("a claim shortly before or after the books begin finds its part beyond") {
  SmallBooks made;
  made.clinic.settings.billing_begins = day;
  made.hand("LN", day - days{2});
  made.bill("L5673", day + days{1});
  made.hand("SL", day + days{1});
  made.bill("L5685", day - days{3});
  made.bill("L5685", day - days{200});  // of parts before the books
  const auto books = made.books();
  CHECK(books.findings.empty());
  CHECK(books.pairs.size() == 2);
  CHECK(books.totals.front().before_books == test::price_of("L5685"));
}

TEST_CASE("what a patient brought along is not billed") {
  SmallBooks made;
  made.bill("L5673", day - days{60});
  made.hand("LN", day - days{60});
  made.clinic.settings.billing_begins = day - days{300};
  made.hand("LK", day - days{200}, "");
  CHECK(made.findings().empty());
  // A part without numbers that comes after numbered ones was handed out here.
  made.hand("LK", day, "");
  REQUIRE(made.findings().size() == 1);
  CHECK(made.findings().front().since == day);
}

TEST_CASE("a part that came back within a fortnight is not billed, or taken back") {
  SmallBooks made;
  test::end(made.hand("LN", day), day + days{14}, EndReason::returned);
  made.bill("L5685", day - days{1});
  made.hand("SL", day - days{1});
  CHECK(made.findings().empty());
  made.bill("L5673", day);
  REQUIRE(made.findings().size() == 1);
  CHECK(made.findings().front().kind == FindingKind::billed_not_issued);
  CHECK(made.findings().front().cause == Cause::came_back);
  CHECK(made.findings().front().remedy == Remedy::take_back);
  // A fifteenth day later it was a part like any other.
  made.clinic.units.front().ended_on = day + days{15};
  CHECK(made.findings().empty());
}

TEST_CASE("the line stands for the part that stayed, not for the one that came back") {
  SmallBooks made;
  test::end(made.hand("LN", day), day + days{5}, EndReason::returned);
  made.hand("LN", day + days{5});
  made.bill("L5673", day);
  const auto books = made.books();
  CHECK(books.findings.empty());
  CHECK(books.pairs.front().days_apart == -5);
}

TEST_CASE("work is not a part") {
  SmallBooks made;
  made.hand("LN", day);
  made.bill("L5673", day);
  auto& work = made.bill("L5673", day, 3);
  work.code = "L7520";
  const auto books = made.books();
  CHECK(books.findings.empty());
  REQUIRE(books.leftovers.size() == 1);
  CHECK(books.leftovers.front().why == WhyAlone::no_part);
}

TEST_CASE("a part handed out lately is still on its way to the payer") {
  SmallBooks made;
  made.hand("LN", day);
  made.bill("L5673", day);
  made.hand("LN", test::books_today - days{14});
  REQUIRE(made.findings().size() == 1);
  CHECK(made.findings().front().cause == Cause::still_on_its_way);
  made.clinic.units.back().issued_on -= days{1};
  CHECK(made.findings().front().cause == Cause::never_billed);
}

TEST_CASE("unbilled money is the payer's fee, the item's usual charge, the code's, or unknown") {
  SmallBooks made;
  const Date recent = test::books_today - days{60};
  for (int i = 0; i < 3; ++i) {
    made.hand("SK", recent + days{i});
    made.bill("L8420", recent + days{i}).charge = cents(1000 + 500 * i);
  }
  made.hand("SK", day - days{100});
  made.hand("SK2", day - days{50});
  made.hand("LK", day - days{50});
  made.hand("LN", day - days{50});
  made.clinic.settings.billing_begins = day - days{200};
  std::map<ItemCode, std::optional<Money>> money;
  for (const auto& each : made.findings()) money[each.item] = each.money;
  CHECK(money.at({"SK"}) == cents(1500));  // the median of 10, 15 and 20
  CHECK(money.at({"SK2"}) == cents(1500));
  CHECK(money.at({"LK"}) == cents(test::price_of("L5671")));
  CHECK(!money.at({"LN"}));
}

TEST_CASE("why a piece stands alone is said with the nearest that it might have gone with") {
  SmallBooks made;
  made.hand("LN", day);
  made.bill("L5673", day);
  made.hand("LN", day + days{60});
  made.hand("SL", day + days{60});
  const auto leftovers = made.books().leftovers;
  REQUIRE(leftovers.size() == 2);
  CHECK(leftovers[0].why == WhyAlone::too_far);
  CHECK(leftovers[0].nearest == 0);
  CHECK(leftovers[1].why == WhyAlone::nothing_near);
  made.clinic.units[1].issued_on = day + days{10};
  made.hand("LN", day);
  CHECK(made.books().leftovers[0].why == WhyAlone::paired_already);
}

TEST_CASE("a second claim is keyed twice or sent again") {
  SmallBooks made;
  made.hand("LN", day);
  made.hand("SL", day);
  for (const char* claim : {"A", "B"}) {
    made.bill("L5673", day).claim_ref = claim;
    made.bill("L5685", day).claim_ref = claim;
  }
  auto found = made.findings();
  REQUIRE(found.size() == 2);
  CHECK(found[0].kind == FindingKind::duplicate);
  CHECK(found[0].reference == "B");
  CHECK(found[0].other == "A");
  CHECK(found[0].cause == Cause::resubmitted);
  made.clinic.claim_lines.pop_back();
  CHECK(made.findings().front().cause == Cause::keyed_twice);
}

TEST_CASE("a line billed for another patient names the one it is of") {
  SmallBooks made;
  made.bill("L5673", day);
  auto& other = made.hand("LN", day + days{3});
  other.patient = {"P-2"};
  auto found = made.findings();
  REQUIRE(found.size() == 2);
  CHECK(found[1].kind == FindingKind::billed_not_issued);
  CHECK(found[1].cause == Cause::other_patient);
  CHECK(found[1].other == "P-2");
  made.hand("LN", day + days{3}).patient = {"P-3"};  // now it may be either
  CHECK(made.findings().back().cause == Cause::unknown);
}

TEST_CASE("a code that stands in no list is one finding for all its lines") {
  SmallBooks made;
  for (const char* patient : {"P-1", "P-2"}) {
    auto& line = made.bill("L5673", day);
    line.code = "X1";
    line.patient = {patient};
  }
  const auto found = made.findings();
  REQUIRE(found.size() == 1);
  CHECK(found.front().kind == FindingKind::code_not_valid);
  CHECK(found.front().quantity == 2);
  CHECK(found.front().patient.empty());
  CHECK(found.front().evidence.claim_lines.size() == 2);
}

TEST_CASE("both sides on one line are told where each side needs its own") {
  SmallBooks made;
  made.hand("LN", day);
  made.hand("LN", day).side = Side::right;
  auto& line = made.bill("L5673", day, 2);
  line.modifiers = {"RT", "LT"};
  const auto found = made.findings();
  REQUIRE(found.size() == 1);
  CHECK(found.front().kind == FindingKind::wrong_side);
  CHECK(found.front().cause == Cause::not_recorded);
  line.code = "L5685";  // no such rule
  made.clinic.units[0].item = made.clinic.units[1].item = {"SL"};
  CHECK(made.findings().empty());
}

TEST_CASE("two of a liner may be in use at once, on each side") {
  SmallBooks made;
  made.hand("LN", day);
  made.hand("LN", day);
  made.hand("LN", day).side = Side::right;
  made.bill("L5673", day, 2);
  auto& right = made.bill("L5673", day);
  right.side = Side::right;
  CHECK(made.findings().empty());
  made.hand("LN", day + days{100});
  made.bill("L5673", day + days{100});
  auto found = made.findings();
  REQUIRE(found.size() == 1);
  CHECK(found.front().kind == FindingKind::over_limit);
  CHECK(found.front().ours == 2);
  CHECK(found.front().theirs == 3);
  test::end(made.clinic.units[0], day + days{100}, EndReason::hole);
  CHECK(made.findings().empty());
}

TEST_CASE("a delivery sheet has a week to come back") {
  SmallBooks made;
  made.hand("LN", day);
  made.bill("L5673", day);
  CHECK(made.findings().empty());  // papers lie elsewhere
  auto handover = handover_of(made.clinic.units.front());
  made.clinic.handovers = {handover};
  auto found = made.findings();
  REQUIRE(found.size() == 1);
  CHECK(found.front().kind == FindingKind::no_proof_of_delivery);
  made.clinic.handovers.front().signed_on = day;
  CHECK(made.findings().empty());
  const auto books =
      reconcile_claims(made.clinic, test::test_codes(), test::test_rules(), day + days{6});
  CHECK(books.findings.empty());
}

TEST_CASE("the cost of a repair is asked for where it is the reason") {
  SmallBooks made;
  made.clinic.settings.papers_begin = day;
  test::end(made.hand("LN", day - days{200}), day - days{3}, EndReason::hole);
  made.hand("LN", day);
  made.bill("L5673", day - days{200});
  made.bill("L5673", day);
  const auto& unit = made.clinic.units.back();
  auto handover = handover_of(unit);
  handover.signed_on = day;
  made.clinic.handovers = {handover};
  const auto file = [&](const char* paper, const char* said) {
    made.clinic.part_papers.push_back({unit.patient, unit.side, unit.item, unit.lot, unit.serial,
                                       unit.issued_on, unit.copy, paper, day, said, "anna"});
  };
  file("order", "");
  file("condition", "");
  CHECK(made.findings().empty());
  file("reason", "cost of the repair");
  REQUIRE(made.findings().size() == 1);
  CHECK(made.findings().front().other == "cost share");
}

TEST_CASE("a piece handed out later makes up for one that ended early without a reason") {
  SmallBooks made;
  test::end(made.hand("SK", day), day + days{30}, EndReason::other);
  made.hand("SK", day + days{200});
  made.bill("L8420", day);
  made.bill("L8420", day + days{200});
  auto found = made.findings();
  REQUIRE(found.size() == 1);
  CHECK(found.front().kind == FindingKind::replaced_early);
  CHECK(found.front().other_day == day + days{30});
  made.clinic.units[0].end_reason = EndReason::hole;
  CHECK(made.findings().empty());
  test::end(made.clinic.units[0], day + days{91}, EndReason::other);  // beyond the term of 90 days
  CHECK(made.findings().empty());
}

}  // namespace reconcile_rules_test
