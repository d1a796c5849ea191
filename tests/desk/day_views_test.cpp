#include "desk/day_views.hpp"

#include <doctest/doctest.h>

#include "desk/sample_day.hpp"

namespace day_views_test {

using namespace sparewell;
using namespace sparewell::desk;

TEST_CASE("What the window shows of a day is prepared with it") {
  const auto day = std::make_shared<const Day>(test_assessment());
  const auto views = prepare_views(day);
  CHECK(views.day == day);
  CHECK(views.work != nullptr);
  CHECK(views.index != nullptr);
  CHECK(views.patients.size() == day->clinic().patients.size());
}

TEST_CASE("While there are the records alone, nobody is told what to do") {
  const auto views = prepare_views(
      std::make_shared<const Day>(records_only(test_assessment().clinic, test_today)));
  CHECK(views.work == nullptr);
  CHECK(views.index != nullptr);
  CHECK_FALSE(views.patients.empty());
}

TEST_CASE("Of a job that was stopped there is nothing to show") {
  const auto views = prepare_views(nullptr);
  CHECK(views.day == nullptr);
  CHECK(views.index == nullptr);
  CHECK(views.patients.empty());
}

}  // namespace day_views_test
