#include "desk/window_layout.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include "desk/remaining_time.hpp"

namespace window_layout_test {

using namespace sparewell::desk;
using Seconds = RemainingTime::Seconds;

namespace {

const std::vector<Column> columns{{"Item", 10, Align::left, "", 1}, {"Pieces", 6, Align::left, ""}};

}  // namespace

TEST_CASE("A column that was set by hand keeps its part of the usual width at any size of text") {
  TableLayout layout;
  const std::vector<ColumnRoom> usual{{100, 75, 1}, {60, 60, 0}};
  note_width(layout, columns[0], usual[0], 130);
  // By hand: 130 is 130 % of 100; at twice the size of text it is 260, and stretches no more.
  const auto rooms = rooms_by_hand({{200, 150, 1}, {120, 120, 0}}, columns, layout);
  CHECK(rooms[0].wanted == 260);
  CHECK(rooms[0].least == 260);
  CHECK(rooms[0].stretch == 0);
  CHECK(rooms[1].wanted == 120);
  CHECK(rooms_by_hand(usual, columns, {})[0].stretch == 1);
}

TEST_CASE("A list goes back to the order it was left in, while it has that column") {
  TableLayout layout;
  CHECK_FALSE(sorted_column(columns, layout));
  layout.sorted_by = "Pieces";
  CHECK(sorted_column(columns, layout) == 1);
  layout.sorted_by = "Gone";
  CHECK_FALSE(sorted_column(columns, layout));
}

TEST_CASE("The arrangement of the window survives being written and read") {
  WindowLayout layout;
  layout.tables["Orders"] = {{{"Item", 140}}, "Item", false};
  layout.borders["Orders"] = 0.4;
  layout.filters["Only open orders"] = "on";
  layout.text_percent = 130;
  CHECK(layout_from(layout_json(layout)) == layout);
  CHECK(layout_from(nlohmann::json::parse("[1]")) == WindowLayout{});
  const auto odd = layout_from(nlohmann::json::parse(
      R"({"borders": {"a": 7.0}, "text_percent": 9000, "tables": {"t": {"widths": {"x": -3}}}})"));
  CHECK(odd.borders.empty());
  CHECK(odd.text_percent == 100);
  CHECK(odd.tables.at("t").widths.empty());
}

TEST_CASE("Text grows and shrinks by steps, no further than the last") {
  CHECK(text_size(100, 1) == 115);
  CHECK(text_size(175, 1) == 175);
  CHECK(text_size(100, -1) == 100);
  CHECK(text_size(150, 0) == 100);
}

TEST_CASE("Nothing is said of the remaining time in the first seconds and when it is not known") {
  RemainingTime remaining;
  CHECK_FALSE(remaining.after(Seconds{0}, 0.0));
  CHECK_FALSE(remaining.after(Seconds{2}, 0.5));
  CHECK_FALSE(remaining.after(Seconds{9}, std::nullopt));
  CHECK_FALSE(RemainingTime{}.after(Seconds{60}, 0.5));
}

TEST_CASE("Work of a steady pace is estimated exactly") {
  RemainingTime remaining;
  std::optional<Seconds> left;
  // One hundredth a second: by hand, 60 s are left after 40 s.
  for (int second = 0; second <= 40; ++second)
    left = remaining.after(Seconds(second), second / 100.);
  REQUIRE(left);
  CHECK(left->count() == doctest::Approx(60).epsilon(1e-9));
}

TEST_CASE("The estimate follows work that becomes slower, and begins anew with another stage") {
  RemainingTime remaining;
  std::optional<Seconds> left;
  for (int second = 0; second <= 20; ++second)
    left = remaining.after(Seconds(second), second / 50.);
  const auto before = *left;  // by hand: 0.6 at 0.02 a second is 30 s
  CHECK(before.count() == doctest::Approx(30));
  for (int i = 1; i <= 20; ++i) left = remaining.after(Seconds(20 + i), 0.4 + i / 500.);
  CHECK(left->count() > 40);
  CHECK_FALSE(remaining.after(Seconds{41}, 0.0));
}

TEST_CASE("The remaining time is said in round numbers") {
  CHECK(remaining_words(Seconds{2}) == "a few seconds left");
  CHECK(remaining_words(Seconds{21}) == "about 20 seconds left");
  CHECK(remaining_words(Seconds{58}) == "about 1 minute left");
  CHECK(remaining_words(Seconds{200}) == "about 3 minutes left");
  CHECK(remaining_words(Seconds{7100}) == "about 2 hours left");
}

}  // namespace window_layout_test
