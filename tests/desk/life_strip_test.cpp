#include "desk/life_strip.hpp"

#include <doctest/doctest.h>

namespace life_strip_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

const Date today = make_date(2026, 11, 25);
constexpr StripMeasures measures{1000, 200, 24, 30, 70};

StripEntry entry() {
  StripEntry made;
  made.id = "1";
  made.issued = today - days{100};
  made.p10 = today + days{50};
  made.p50 = today + days{100};
  made.p90 = today + days{150};
  made.order_by = today + days{30};
  return made;
}

}  // namespace

TEST_CASE("Marks lie in the order of their dates, right of the labels") {
  const auto drawing = draw_lives({entry()}, today, measures);
  REQUIRE(drawing.rows.size() == 1);
  const auto& row = drawing.rows[0];
  REQUIRE(row.worn);
  REQUIRE(row.ahead);
  CHECK(row.worn->from > measures.label_width);
  CHECK(row.worn->to == doctest::Approx(drawing.today));
  CHECK(*row.order_by > drawing.today);
  CHECK(row.ahead->from > *row.order_by);
  CHECK(*row.median > row.ahead->from);
  CHECK(row.ahead->to > *row.median);
  CHECK(row.ahead->to < measures.width);
  CHECK_FALSE(row.ahead->cut_to);
}

TEST_CASE("Equal spans of days are equally long") {
  const auto row = draw_lives({entry()}, today, measures).rows[0];
  CHECK(*row.median - row.ahead->from == doctest::Approx(row.ahead->to - *row.median));
}

TEST_CASE("A life beyond the axis is cut there, and a forecast without an end goes on past it") {
  auto old = entry();
  old.issued = today - days{2000};
  old.p90.reset();
  const auto row = draw_lives({old}, today, measures).rows[0];
  CHECK(row.worn->cut_from);
  CHECK(row.ahead->cut_to);
}

TEST_CASE("An order-by day that has passed is drawn at today and said to have passed") {
  auto late = entry();
  late.order_by = today - days{3};
  const auto drawing = draw_lives({late}, today, measures);
  CHECK(drawing.rows[0].order_by_passed);
  CHECK(*drawing.rows[0].order_by == doctest::Approx(drawing.today));
}

TEST_CASE("An ended part has no forecast, and headings only take room") {
  StripEntry heading;
  heading.heading = "Left side";
  auto ended = entry();
  ended.ended = today - days{10};
  const auto drawing = draw_lives({heading, ended}, today, measures);
  CHECK(drawing.rows[0].heading);
  CHECK_FALSE(drawing.rows[0].worn);
  CHECK_FALSE(drawing.rows[1].ahead);
  CHECK(drawing.rows[1].worn->to < drawing.today);
  CHECK(drawing.rows[1].top == doctest::Approx(30 + 24));
  CHECK(drawing.height == doctest::Approx(30 + 2 * 24));
  CHECK(drawing.entry_at(60, 24) == 1);
  CHECK_FALSE(drawing.entry_at(10, 24));
}

TEST_CASE("Tick labels do not touch, at any width") {
  for (const double width : {300.0, 700.0, 1000.0, 2500.0}) {
    auto wide = measures;
    wide.width = width;
    const auto drawing = draw_lives({entry()}, today, wide);
    for (std::size_t i = 1; i < drawing.ticks.size(); ++i) {
      CHECK(drawing.ticks[i].x - drawing.ticks[i - 1].x > measures.tick_label_width);
    }
  }
}

}  // namespace life_strip_test
