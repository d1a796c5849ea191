#include "billing/issue_limits.hpp"

#include <doctest/doctest.h>

#include "billing/small_books.hpp"

namespace issue_limits_test {

using namespace sparewell;
using namespace sparewell::billing;
using test::SmallBooks;

namespace {

const Date day = make_date(2026, 5, 4);

IssueLimits check(const SmallBooks& made, const char* item, int quantity) {
  const ClinicIndex index{made.clinic};
  return check_before_issue(made.clinic, index, test::test_rules(), {"P-1"}, Side::left,
                            *index.item({item}), quantity, day);
}

}  // namespace

TEST_CASE("pieces beyond what may be in use at once are told before they are handed out") {
  SmallBooks made;
  made.hand("LN", day - days{100});
  CHECK(check(made, "LN", 1).over.empty());
  const auto over = check(made, "LN", 2).over;
  REQUIRE(over.size() == 1);
  CHECK(over.front().allowed == 2);
  CHECK(over.front().had == 3);
  CHECK(check(made, "CN", 2).over.empty());  // another code
  CHECK(check(made, "SL", 9).over.empty());  // without a rule
}

TEST_CASE("pieces beyond what one payer pays in a period are told") {
  SmallBooks made;
  Patient patient;
  patient.ref = {"P-1"};
  patient.payer = "Payer A";
  made.clinic.patients = {patient};
  for (int i = 0; i < 10; ++i) made.hand("SH", day - days{364});
  CHECK(check(made, "SH", 2).over.empty());
  CHECK(check(made, "SH", 3).over.size() == 1);
  made.clinic.patients.front().payer = "nobody's rule";
  CHECK(check(made, "SH", 3).over.empty());
}

TEST_CASE("a part that ended early, and the papers of a replacement, are told") {
  SmallBooks made;
  auto& before = made.hand("LN", day - days{50});
  CHECK(!check(made, "LN", 1).replaced);  // still in use
  test::end(before, day - days{1}, EndReason::other);
  const auto limits = check(made, "LN", 1);
  REQUIRE(limits.replaced.has_value());
  CHECK(limits.replaced->early.has_value());
  CHECK(limits.replaced->unexplained);
  CHECK(limits.replaced->days_in_use == 49);
  CHECK(limits.replaced->papers.size() == 3);
  made.clinic.units.front().end_reason = EndReason::tear;
  CHECK(!check(made, "LN", 1).replaced->unexplained);
  made.clinic.units.front().issued_on = day - days{200};
  CHECK(!check(made, "LN", 1).replaced->early);
  made.hand("LN", day - days{1});  // replaced already
  CHECK(!check(made, "LN", 1).replaced);
}

}  // namespace issue_limits_test
