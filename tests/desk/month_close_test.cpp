// Months of the sample clinic's books, closed in a database.
#include "desk/billing/month_close.hpp"

#include <doctest/doctest.h>

#include "desk/billing/month_words.hpp"
#include "desk/sample_books.hpp"

namespace month_close_test {

using namespace sparewell;
using namespace sparewell::desk;
using namespace sparewell::test;

namespace {

const Date october = make_date(2026, 10, 1);

Expected<MonthBooks> close(store::Store& store, const MonthCloseRequest& request,
                           Date today = import_day()) {
  const auto work = store.begin_write({"tester", "close"});
  auto closed = close_month(*work, request, today);
  if (closed) work->commit();
  return closed;
}

/// Puts another charge on a claim line of October.
void change_a_charge(store::Store& store, std::int64_t by) {
  const auto work = store.begin_write({"tester", "change"});
  for (auto& row : work->all<ClaimLine>()) {
    auto& line = row.record;
    if (line.service_date < october || line.service_date >= october + days{31} || !line.charge) {
      continue;
    }
    line.charge->minor += by;
    work->put_instead(row.id, line);
    break;
  }
  work->commit();
}

}  // namespace

TEST_CASE("a month that is over is closed with every record of its days") {
  const auto store = sample_store();
  const auto closed = close(*store, {october, "Anna", ""});
  REQUIRE(closed.has_value());
  CHECK(closed->close == MonthClose{october, 1, import_day(), "Anna", ""});
  std::map<BookEntry, std::int64_t> sums;
  for (const auto& entry : closed->entries) {
    if (entry.amount) sums[entry.entry] += entry.amount->minor;
  }
  std::int64_t charges = 0;
  std::int64_t invoices = 0;
  const auto in_month = [](const std::optional<Date>& day) {
    return day && *day >= october && *day < make_date(2026, 11, 1);
  };
  for (const auto& line : sample_clinic().claim_lines) {
    if (in_month(line.service_date) && line.charge) charges += line.charge->minor;
  }
  for (const auto& line : sample_clinic().invoice_lines) {
    if (!in_month(line.invoiced_on)) continue;
    invoices += line.unit_cost->minor * line.quantity + (line.freight ? line.freight->minor : 0);
  }
  CHECK(sums[BookEntry::claim] == charges);
  CHECK(sums[BookEntry::invoice] == invoices);
  const auto months = closed_months(*store->read());
  REQUIRE(months.size() == 1);
  CHECK(months.front().entries == closed->entries);
  CHECK(store->verify().empty());
}

TEST_CASE("a month that is not over, is empty, has no closer or has not changed is refused") {
  const auto store = sample_store();
  const auto sentence = [&](const MonthCloseRequest& request) {
    const auto refused = close(*store, request);
    REQUIRE_FALSE(refused.has_value());
    return refused.error().sentence;
  };
  CHECK(sentence({make_date(2026, 11, 1), "Anna", ""}) ==
        "November 2026 is not over; it can be closed from 1 Dec 2026 on.");
  CHECK(sentence({october, "", ""}) == "Say who closes the month.");
  CHECK(sentence({make_date(1999, 1, 1), "Anna", ""}) ==
        "Nothing of January 1999 is on record; check the month.");
  REQUIRE(close(*store, {october, "Anna", ""}).has_value());
  CHECK(sentence({october, "Ben", ""}) ==
        "October 2026 was closed on 25 Nov 2026 by Anna, and nothing of it has changed since.");
  CHECK(closed_months(*store->read()).size() == 1);
}

TEST_CASE("what changes after the close is told, and closing again gives the next number") {
  const auto store = sample_store();
  CHECK_FALSE(changes_of_month(*store->read(), october).has_value());
  REQUIRE(close(*store, {october, "Anna", ""}).has_value());
  CHECK(changes_of_month(*store->read(), october)->since.changes.empty());
  change_a_charge(*store, 1234);
  const auto changed = changes_of_month(*store->read(), october);
  REQUIRE(changed.has_value());
  REQUIRE(changed->since.changes.size() == 1);
  CHECK(changed->since.changes.front().difference() == Money{1234, {"EUR"}});
  CHECK(summary_lines(*changed).front() ==
        "1 record has changed since it was closed: claim lines +12.34 EUR.");
  const auto again = close(*store, {october, "Ben", "after a correction"});
  REQUIRE(again.has_value());
  CHECK(again->close.number == 2);
  CHECK(close_words(again->close) ==
        "October 2026, closed for the 2. time on 25 Nov 2026 by Ben: after a correction.");
  CHECK(changes_of_month(*store->read(), october)->since.changes.empty());
  CHECK(closed_months(*store->read()).size() == 2);
}

TEST_CASE("findings of the month or earlier are still open") {
  const auto& items = sample_books().items;
  const int until_october = open_until(items, october);
  CHECK(until_october > 0);
  CHECK(until_october <= open_until(items, make_date(2026, 11, 1)));
  CHECK(open_until(items, make_date(2030, 1, 1)) == static_cast<int>(items.size()));
}

TEST_CASE("months are read and written as people write them") {
  CHECK(parse_month("2026-10") == october);
  CHECK_FALSE(parse_month("2026-13").has_value());
  CHECK_FALSE(parse_month("Oct 2026").has_value());
  CHECK(month_key(october) == "2026-10");
  CHECK(month_title(october) == "October 2026");
}

}  // namespace month_close_test
