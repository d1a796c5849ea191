#include "desk/stock_picture.hpp"

#include <doctest/doctest.h>

#include "desk/course_bench.hpp"
#include "desk/sample_day.hpp"

namespace stock_picture_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

picture::Room room(double width, double height) {
  picture::Room made{width, height, 18, 1, {}};
  made.text_width = [](std::string_view text) { return 8.0 * static_cast<double>(text.size()); };
  return made;
}

/// Ten pieces that lose one a week, 4 on order, a lot that is lost in part, and today's order.
ItemCoursePtr course() {
  supply::ItemCourse made;
  made.item = {"LL-24"};
  made.today = test_today;
  made.there = 10;
  for (int week = 0; week <= supply::course_weeks; ++week) {
    const int left = std::max(0, 10 - week);
    supply::CoursePoint point{test_today + days{7 * week},
                              std::max(0, left - 2),
                              std::max(0, left - 1),
                              left,
                              left + 1,
                              left + 2};
    point.mean = left;
    point.chance_none = week / 30.0;
    made.alone.push_back(point);
    for (int* of : {&point.p10, &point.p25, &point.p50, &point.p75, &point.p90}) *of += 5;
    point.chance_none /= 4;
    made.with_order.push_back(point);
  }
  made.coming = {{"PO-1", 4, test_today + days{2}, test_today + days{9}, test_today + days{16}}};
  made.ordered_today = {{"", 5, test_today + days{7}, test_today + days{8}, test_today + days{14}}};
  made.at_risk = {{"A17", test_today + days{40}, 6, 2.5}};
  made.target = 12;
  made.wanted = 0.95;
  made.position = 10;
  made.next_order_day = test_today + days{7};
  made.next_arrival = test_today + days{15};
  made.order_days = {made.next_order_day, test_today + days{14}};
  made.runs_out = test_today + days{21};
  return std::make_shared<const supply::ItemCourse>(std::move(made));
}

bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

template <class Kind>
std::size_t count(const picture::Picture& drawn) {
  std::size_t made = 0;
  for (const auto& mark : drawn.marks) made += std::holds_alternative<Kind>(mark) ? 1 : 0;
  return made;
}

}  // namespace

TEST_CASE("The course is drawn as two bands, two middles, a level, arrivals and losses") {
  const auto drawn = stock_picture(course())(room(600, 260));
  CHECK(drawn.width == 600);
  CHECK(drawn.height == 260);
  CHECK(count<picture::Shape>(drawn) == 2);
  // An order on its way, today's order, a lot that is lost, and the day on which nothing is left.
  CHECK(count<picture::Sign>(drawn) == 4);
  std::vector<picture::Fill> fills;
  bool level = false;
  for (const auto& mark : drawn.marks) {
    if (const auto* shape = std::get_if<picture::Shape>(&mark)) fills.push_back(shape->fill);
    if (const auto* words = std::get_if<picture::Words>(&mark)) {
      level = level || words->text == "Order up to 12";
    }
  }
  CHECK(level);
  // Told apart without colour.
  CHECK(fills == std::vector{picture::Fill::dotted, picture::Fill::hatched});
}

TEST_CASE("Everything that is drawn stays within the picture") {
  for (const auto& [width, height] : {std::pair{380.0, 180.0}, {600.0, 260.0}, {1500.0, 900.0}}) {
    const auto drawn = stock_picture(course())(room(width, height));
    const auto inside = [&](const picture::Spot& spot) {
      return spot.x >= 0 && spot.x <= drawn.width + 1e-6 && spot.y >= 0 &&
             spot.y <= drawn.height + 1e-6;
    };
    for (const auto& mark : drawn.marks) {
      if (const auto* stroke = std::get_if<picture::Stroke>(&mark)) {
        for (const auto& spot : stroke->through) CHECK(inside(spot));
      }
      if (const auto* shape = std::get_if<picture::Shape>(&mark)) {
        for (const auto& spot : shape->outline) CHECK(inside(spot));
      }
    }
  }
}

TEST_CASE("Each week is a stop that says its figures and what happens in it") {
  const auto drawn = stock_picture(course())(room(600, 260));
  REQUIRE(drawn.stops.size() == supply::course_weeks + 1);
  CHECK(drawn.stops[1].id == "2026-12-02");
  CHECK(says(drawn.stops[0].words, "Today, 25 Nov 2026: 10 in the middle"));
  CHECK(says(drawn.stops[1].words, "9 in the middle, 8 to 10 with 50 %, 7 to 11 with 80 % chance"));
  CHECK(says(drawn.stops[1].words, "4 pieces of order PO-1 arrive"));
  CHECK(says(drawn.stops[1].words, "Order day: Wed 2 Dec 2026."));
  CHECK(says(drawn.stops[5].words, "About 2.5 of lot A17 go past their use-by date"));
}

TEST_CASE("The words and the table say what is drawn") {
  const auto drawn = stock_picture(course())(room(600, 260));
  CHECK(drawn.title == "Stock of LL-24 over 26 weeks");
  CHECK(says(drawn.words, "10 pieces usable today."));
  CHECK(says(drawn.words, "nothing is left by 16 Dec 2026 with a chance of 10 %."));
  CHECK(says(drawn.words, "With today's order it stays below 10 % for 26 weeks."));
  CHECK(says(drawn.words, "Order up to 12 pieces, which lasts with a chance of 95 %"));
  CHECK(says(drawn.words, "The next order day is Wed 2 Dec 2026"));
  REQUIRE(drawn.table.rows.size() == supply::course_weeks + 1);
  CHECK(drawn.table.headings.size() == drawn.table.rows.front().size());
  CHECK(drawn.table.rows[1][1] == "9");
}

TEST_CASE("A day's bench works the course of an item out once") {
  auto assessment = test_assessment();
  assessment.clinic.shelf.push_back({{{"A-28"}, "L1", std::nullopt}, "main store", 2});
  CourseBench bench{std::make_shared<const Day>(std::move(assessment))};
  const auto made = bench.of({"A-28"});
  REQUIRE(made);
  CHECK(made->there == 2);
  CHECK(bench.of({"A-28"}) == made);
  CHECK_FALSE(bench.of({"NONE"}));
}

}  // namespace stock_picture_test
