#include "desk/play_chart.hpp"

#include <algorithm>

#include <doctest/doctest.h>

namespace play_chart_test {

using namespace sparewell::desk;

namespace {

constexpr PlayMeasures measures{800, 400, 60, 20, 30, 50, 60, 15};

std::vector<PlayCurve> curves() {
  return {
      {"Ours", {{"1", "", 5000, 0.55, ""}, {"2", "", 8000, 0.9, ""}, {"3", "", 10000, 1, "now"}}},
      {"Peer", {{"4", "", 12000, 0.85, ""}, {"5", "", 20000, 0.95, ""}}}};
}

}  // namespace

TEST_CASE("Money goes to the right, shares go up, and points nobody wants are left out") {
  const auto drawing = draw_play(curves(), measures);
  REQUIRE(drawing.marks.size() == 4);
  CHECK(drawing.marks[0].point == 1);
  CHECK(drawing.marks[0].x < drawing.marks[1].x);
  CHECK(drawing.marks[0].y > drawing.marks[1].y);
  CHECK(drawing.marks[1].y == doctest::Approx(drawing.top));  // 100 %
  for (const auto& mark : drawing.marks) {
    CHECK(mark.x >= drawing.across.left);
    CHECK(mark.x <= drawing.across.right);
    CHECK(mark.y >= drawing.top);
    CHECK(mark.y <= drawing.bottom);
  }
}

TEST_CASE("Ticks lie where their amounts and shares lie") {
  const auto drawing = draw_play(curves(), measures);
  CHECK(drawing.stock_ticks[0].label == "0");
  CHECK(drawing.stock_ticks[0].x == doctest::Approx(drawing.across.left));
  const auto ten = std::ranges::find(drawing.stock_ticks, "10,000", &Tick::label);
  REQUIRE(ten != drawing.stock_ticks.end());
  CHECK(ten->x == doctest::Approx(drawing.marks[1].x));
  CHECK(drawing.fill_rate_ticks[0].label == "100 %");
  const auto ninety = std::ranges::find(drawing.fill_rate_ticks, "90 %", &Tick::label);
  REQUIRE(ninety != drawing.fill_rate_ticks.end());
  CHECK(ninety->x == doctest::Approx(drawing.marks[0].y));
  for (std::size_t i = 1; i < drawing.stock_ticks.size(); ++i) {
    CHECK(drawing.stock_ticks[i].x - drawing.stock_ticks[i - 1].x > measures.tick_label_width);
  }
}

TEST_CASE("The nearest mark within reach is found") {
  const auto drawing = draw_play(curves(), measures);
  const auto& mark = drawing.marks[2];
  CHECK(drawing.mark_at(mark.x + 3, mark.y - 3, 10) == 2);
  CHECK_FALSE(drawing.mark_at(mark.x + 30, mark.y, 10));
}

TEST_CASE("Nothing to draw and no room do no harm") {
  CHECK(draw_play({}, measures).marks.empty());
  const auto drawing = draw_play(curves(), {});
  CHECK(drawing.across.right > drawing.across.left);
}

}  // namespace play_chart_test
