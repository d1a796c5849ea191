#include "desk/backtest_chart.hpp"

#include <algorithm>

#include <doctest/doctest.h>

#include "desk/flow.hpp"

namespace backtest_chart_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

constexpr ChartMeasures measures{1000, 100, 30, 40, 20, 40};

ScoreEntry entry(const std::string& id, double shift, wear::Compared error) {
  ScoreEntry made;
  made.id = id;
  made.coverage = {wear::Coverage{0.5 + shift, 0.45 + shift, 0.55 + shift},
                   wear::Coverage{0.8 + shift, 0.75 + shift, 0.84 + shift},
                   wear::Coverage{0.95 + shift, 0.93 + shift, 0.97 + shift}};
  made.error = error;
  return made;
}

}  // namespace

TEST_CASE(
    "A span that holds what it should has its mark on its line, between its interval's ends") {
  const auto drawing = draw_scores({entry("all", 0, {20, 70, 30})}, measures);
  REQUIRE(drawing.rows.size() == 1);
  REQUIRE(drawing.nominal.size() == 3);
  for (std::size_t i = 0; i < span_count; ++i) {
    const auto& mark = drawing.rows[0].marks[i];
    REQUIRE(mark);
    CHECK(mark->x == doctest::Approx(drawing.nominal[i].x));
    CHECK(mark->low < mark->x);
    CHECK(mark->high > mark->x);
    CHECK(mark->low >= drawing.coverage.left);
    CHECK(mark->high <= drawing.coverage.right);
  }
  CHECK(drawing.nominal[0].label == "50 %");
  CHECK(drawing.nominal[2].label == "95 %");
}

TEST_CASE("Equal shares are equally far apart, and 100 % is the right end") {
  const auto drawing = draw_scores({entry("all", 0, {20, 70, 30})}, measures);
  const double tenth = (drawing.nominal[1].x - drawing.nominal[0].x) / 3;
  CHECK(drawing.nominal[2].x - drawing.nominal[1].x == doctest::Approx(1.5 * tenth));
  CHECK(drawing.coverage.right - drawing.nominal[1].x == doctest::Approx(2 * tenth));
}

TEST_CASE("The coverage axis begins below the least figure of all, and never below nothing") {
  auto low = entry("pump", 0, {1, 1, 1});
  low.coverage[0] = wear::Coverage{0.1, 0.0, 0.3};
  const auto drawing = draw_scores({entry("all", 0, {20, 70, 30}), low}, measures);
  CHECK(drawing.rows[1].marks[0]->low == doctest::Approx(drawing.coverage.left));
  CHECK(drawing.rows[1].marks[0]->x > drawing.coverage.left);
  const auto narrow = draw_scores({entry("all", -0.2, {20, 70, 30})}, measures);
  CHECK(narrow.rows[0].marks[0]->low > narrow.coverage.left);
}

TEST_CASE("Error bars are as long as their days, on one scale for all kinds") {
  const auto drawing =
      draw_scores({entry("all", 0, {20, 70, 30}), entry("lock", 0, {7, 35, 14})}, measures);
  const auto length = [&](std::size_t row, std::size_t bar) {
    return drawing.rows[row].errors[bar]->to - drawing.errors.left;
  };
  CHECK(length(0, 1) == doctest::Approx(3.5 * length(0, 0)));
  CHECK(length(1, 1) == doctest::Approx(length(0, 1) / 2));
  CHECK(drawing.rows[0].errors[1]->to <= drawing.errors.right);
  CHECK(drawing.errors.right <= measures.width);
  CHECK(drawing.errors.left > drawing.coverage.right);
  // A tick of 20 days lies where a bar of 20 days ends.
  const auto twenty = std::ranges::find(drawing.error_ticks, "20", &Tick::label);
  REQUIRE(twenty != drawing.error_ticks.end());
  CHECK(twenty->x == doctest::Approx(drawing.rows[0].errors[0]->to));
}

TEST_CASE("The three marks and bars of a row lie one below the other, inside the row") {
  const auto drawing =
      draw_scores({entry("all", 0, {20, 70, 30}), entry("lock", 0, {7, 35, 14})}, measures);
  const auto& row = drawing.rows[1];
  CHECK(row.top == doctest::Approx(40 + 30));
  CHECK(row.marks[0]->y > row.top);
  CHECK(row.marks[0]->y < row.marks[1]->y);
  CHECK(row.marks[1]->y < row.marks[2]->y);
  CHECK(row.errors[2]->top + row.errors[2]->height < row.top + 30);
  CHECK(drawing.height == doctest::Approx(40 + 2 * 30));
  CHECK(drawing.entry_at(75, 30) == 1);
  CHECK_FALSE(drawing.entry_at(39, 30));
  CHECK_FALSE(drawing.entry_at(101, 30));
}

TEST_CASE("Tick labels do not touch, at any width") {
  for (const double width : {300.0, 700.0, 1000.0, 2500.0}) {
    auto wide = measures;
    wide.width = width;
    for (const double error : {0.3, 7.0, 68.0, 900.0}) {
      const auto drawing = draw_scores({entry("all", 0, {1, error, 1})}, wide);
      REQUIRE(drawing.error_ticks.size() >= 1);
      CHECK(drawing.error_ticks[0].label == "0");
      for (std::size_t i = 1; i < drawing.error_ticks.size(); ++i) {
        const double apart = drawing.error_ticks[i].x - drawing.error_ticks[i - 1].x;
        CHECK(apart > measures.tick_label_width);
      }
    }
  }
}

TEST_CASE("What is not known is not drawn") {
  ScoreEntry unknown;
  unknown.id = "pump";
  const auto drawing = draw_scores({unknown}, measures);
  CHECK_FALSE(drawing.rows[0].marks[0]);
  CHECK_FALSE(drawing.rows[0].errors[0]);
  CHECK(draw_scores({}, measures).rows.empty());
}

TEST_CASE("Pieces flow into as many lines as the width needs") {
  const auto places = flow({40, 40, 40, 200, 10}, 100);
  REQUIRE(places.size() == 5);
  CHECK(places[1].x == 40);
  CHECK(places[1].line == 0);
  CHECK(places[2].x == 0);
  CHECK(places[2].line == 1);
  CHECK(places[3].line == 2);
  CHECK(places[4].line == 3);
  CHECK(flow({}, 100).empty());
}

}  // namespace backtest_chart_test
