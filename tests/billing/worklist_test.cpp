#include "billing/worklist.hpp"

#include <doctest/doctest.h>

namespace worklist_test {

using namespace sparewell;
using namespace sparewell::billing;

namespace {

const Date today = make_date(2026, 11, 25);

BillingFinding finding(std::string key, std::optional<Money> money) {
  BillingFinding made;
  made.key = std::move(key);
  made.since = today - days{30};
  made.quantity = 1;
  made.money = money;
  return made;
}

BillingAnswer answer(std::string key, int number, Answer what, const BillingFinding& of) {
  BillingAnswer made;
  made.finding = std::move(key);
  made.number = number;
  made.answer = what;
  made.answered_on = today - days{3};
  made.quantity = of.quantity;
  made.money = of.money;
  return made;
}

const Money ten{1000, {"EUR"}};

WorkItem listed(const BillingFinding& of, std::vector<BillingAnswer> answers) {
  auto items = make_worklist({of}, answers, today);
  REQUIRE(items.size() == 1);
  return items.front();
}

}  // namespace

TEST_CASE("a finding is open until somebody answers it") {
  const auto found = finding("a", ten);
  CHECK(listed(found, {}).state == WorkState::open);
  CHECK(listed(found, {}).age_days == 30);
  CHECK(listed(found, {answer("b", 1, Answer::accepted, found)}).state == WorkState::open);
  for (const auto settled : {Answer::accepted, Answer::corrected, Answer::written_off}) {
    CHECK(listed(found, {answer("a", 1, settled, found)}).state == WorkState::settled);
  }
}

TEST_CASE("the newest answer counts, whatever their order") {
  const auto found = finding("a", ten);
  const auto item = listed(
      found, {answer("a", 2, Answer::open_again, found), answer("a", 1, Answer::accepted, found)});
  CHECK(item.state == WorkState::open);
  CHECK(item.history.front().answer == Answer::accepted);
  CHECK(item.answer()->answer == Answer::open_again);
}

TEST_CASE("an answer no longer stands once the money or the quantity is another") {
  const auto found = finding("a", ten);
  auto other = found;
  other.money = Money{1001, {"EUR"}};
  CHECK(listed(other, {answer("a", 1, Answer::written_off, found)}).state == WorkState::open);
  CHECK(listed(other, {answer("a", 1, Answer::written_off, found)}).has_changed);
  other = found;
  other.quantity = 2;
  CHECK(listed(other, {answer("a", 1, Answer::written_off, found)}).has_changed);
}

TEST_CASE("who was asked is asked again when the day has come") {
  const auto found = finding("a", ten);
  auto asked = answer("a", 1, Answer::asked, found);
  CHECK(listed(found, {asked}).state == WorkState::waiting);
  asked.ask_again_on = today;
  CHECK(listed(found, {asked}).state == WorkState::open);
  CHECK(listed(found, {asked}).ask_again);
  asked.ask_again_on.reset();
  asked.answered_on = today - days{days_to_answer};
  CHECK(listed(found, {asked}).ask_again);
}

TEST_CASE("what is at stake is summed by currency and direction") {
  const auto items =
      make_worklist({finding("a", ten), finding("b", Money{-300, {"EUR"}}), finding("c", ten),
                     finding("d", Money{5, {"USD"}}), finding("e", {})},
                    {}, today);
  const auto stake = stake_of(items);
  CHECK(stake.to_receive == std::vector<Money>{{2000, {"EUR"}}, {5, {"USD"}}});
  CHECK(stake.to_give == std::vector<Money>{{300, {"EUR"}}});
  CHECK(stake.without_sum == 1);
}

}  // namespace worklist_test
