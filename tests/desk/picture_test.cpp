#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

#include "desk/picture/figure_table.hpp"
#include "desk/picture/life_picture.hpp"
#include "desk/picture/limb_picture.hpp"
#include "desk/picture/pattern.hpp"
#include "desk/picture/play_picture.hpp"
#include "desk/picture/score_picture.hpp"
#include "desk/picture/sheets.hpp"
#include "desk/picture/worn_picture.hpp"

namespace picture_test {

using namespace sparewell;
using namespace sparewell::desk;
using namespace sparewell::picture;

namespace {

const Date today = make_date(2026, 11, 25);

/// Every letter is 7 wide.
Room room(double width = 900, double height = 400) {
  Room made;
  made.width = width;
  made.height = height;
  made.line_height = 16;
  made.text_width = [](std::string_view text) { return 7.0 * static_cast<double>(text.size()); };
  return made;
}

std::vector<StripEntry> strips() {
  StripEntry heading;
  heading.heading = "Left side";
  StripEntry liner;
  liner.id = "7";
  liner.label = "Liner LN01";
  liner.words = "Liner LN01: even chance by 5 March 2027.";
  liner.issued = today - days{100};
  liner.p10 = today + days{50};
  liner.p50 = today + days{100};
  liner.p90 = today + days{150};
  liner.order_by = today + days{30};
  StripEntry ended = liner;
  ended.id = "8";
  ended.label = "Pin PN02";
  ended.words = "Pin PN02 was worn out.";
  ended.ended = today - days{20};
  return {heading, liner, ended};
}

LimbCurve limb() {
  LimbCurve curve;
  curve.name = "Left, 4 cm above the end";
  curve.words = "Left, 4 cm above the end: 2 measurements.";
  curve.dots = {{today - days{90}, 24.0, false}, {today - days{30}, 23.5, true}};
  curve.dot_words = {"24.0 cm", "23.5 cm between heights"};
  for (int i = 0; i <= 10; ++i) {
    curve.trend.emplace_back(today - days{90 - 20 * i},
                             care::LimbPrediction{24 - 0.1 * i, 23.5 - 0.1 * i, 24.5 - 0.1 * i});
  }
  curve.sizes = {{"LN01-M", 23.0, 25.0}};
  curve.today = today;
  curve.until = today + days{110};
  return curve;
}

std::vector<PlayCurve> plays() {
  return {{"Ours", {{"2", "A", 8000, 0.9, ""}, {"3", "B", 10000, 1, "present target"}}},
          {"Peer", {{"4", "C", 12000, 0.85, ""}, {"5", "D", 20000, 0.95, ""}}}};
}

std::vector<ScoreEntry> scores() {
  ScoreEntry all;
  all.id = "all";
  all.label = "All kinds";
  all.words = "Of all kinds 79 % held.";
  all.coverage[1] = wear::Coverage{0.79, 0.77, 0.80};
  all.error = wear::Compared{20, 70, 22};
  ScoreEntry liner = all;
  liner.id = "liner";
  liner.label = "Liners";
  liner.words = "Of liners 75 % held.";
  return {all, liner};
}

WornChart worn() {
  WornChart chart;
  chart.from = today - days{400};
  chart.today = today;
  chart.strips = {{"Left side", "", "", {}},
                  {"",
                   "SN03-M",
                   "SN03-M was worn twice.",
                   {{today - days{400}, today - days{200}}, {today - days{100}, today}}}};
  LogEntry late;
  late.day = today - days{50};
  LogEntry early;
  early.day = today - days{300};
  chart.reactions = {late, early};
  return chart;
}

std::vector<Maker> all_makers() {
  return {life_picture(strips(), "P-0001", today),
          limb_picture(limb(), "P-0001"),
          play_picture(plays(), "Money"),
          score_picture(scores()),
          worn_picture(worn(), "P-0001"),
          life_picture({}, "P-0001", today),
          limb_picture(std::nullopt, "P-0001"),
          play_picture({}, "Money"),
          score_picture({})};
}

std::vector<Spot> places(const Mark& mark) {
  if (const auto* stroke = std::get_if<Stroke>(&mark)) return stroke->through;
  if (const auto* box = std::get_if<Box>(&mark)) return corners(box->area);
  if (const auto* shape = std::get_if<Shape>(&mark)) return shape->outline;
  if (const auto* sign = std::get_if<Sign>(&mark)) return {sign->at};
  return {std::get<Words>(mark).at};
}

double area_of(const std::vector<Spot>& outline) {
  double twice = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const auto& a = outline[i];
    const auto& b = outline[(i + 1) % outline.size()];
    twice += a.x * b.y - b.x * a.y;
  }
  return std::abs(twice) / 2;
}

}  // namespace

TEST_CASE("Every picture has a title, words and a table, drawn or not") {
  for (const auto& make : all_makers()) {
    const auto picture = make(room());
    CHECK_FALSE(picture.title.empty());
    CHECK_FALSE(picture.words.empty());
    CHECK_FALSE(picture.table.headings.empty());
    for (const auto& row : picture.table.rows) {
      CHECK(row.size() == picture.table.headings.size());
    }
    for (const auto& stop : picture.stops) {
      CHECK_FALSE(stop.id.empty());
      CHECK_MESSAGE(std::ranges::count(picture.stops, stop.id, &Stop::id) == 1, stop.id);
    }
  }
}

TEST_CASE("Marks and stops lie within their picture, in wide and in narrow rooms") {
  for (const double width : {1600.0, 900.0, 480.0}) {
    for (const auto& make : all_makers()) {
      const auto picture = make(room(width));
      CAPTURE(picture.title);
      CAPTURE(width);
      CHECK(picture.fixed_top <= picture.height);
      for (const auto& mark : picture.marks) {
        for (const auto& at : places(mark)) {
          // A cut end's strokes and the signs' halves may reach over by a few units.
          CHECK(at.x >= -12);
          CHECK(at.x <= width + 12);
          CHECK(at.y >= -12);
          CHECK(at.y <= picture.height + 12);
        }
      }
      for (const auto& stop : picture.stops) {
        CHECK(stop.area.right > stop.area.left);
        CHECK(stop.area.bottom > stop.area.top);
        CHECK(stop.area.bottom <= picture.height + 12);
      }
    }
  }
}

TEST_CASE("A room without size does no harm") {
  for (const auto& make : all_makers()) CHECK_FALSE(make(room(0, 0)).title.empty());
}

TEST_CASE("Stops and tables agree with the parts, and keep their ids in another room") {
  const auto make = life_picture(strips(), "P-0001", today);
  const auto picture = make(room());
  REQUIRE(picture.stops.size() == 2);
  CHECK(picture.stops[0].id == "7");
  CHECK(picture.stops[0].words == strips()[1].words);
  CHECK(picture.stops[1].id == make(room(500)).stops[1].id);
  REQUIRE(picture.table.rows.size() == 2);
  CHECK(picture.table.rows[0] == std::vector<std::string>{"Left side", "Liner LN01", "17 Aug 2026",
                                                          "", "14 Jan 2027", "5 Mar 2027",
                                                          "24 Apr 2027", "25 Dec 2026"});
  CHECK(picture.table.rows[1][3] == "5 Nov 2026");
  CHECK(picture.stops[0].area.top >= picture.fixed_top);
  CHECK(picture.title == "Lives of the parts of P-0001 on 25 Nov 2026");
  CHECK(picture.words.find("does not replace the judgement") != std::string::npos);
}

TEST_CASE("Measurements are stops, and the table ends with what is foreseen") {
  const auto picture = limb_picture(limb(), "P-0001")(room());
  REQUIRE(picture.stops.size() == 2);
  CHECK(picture.stops[0].id == "2026-08-27");
  REQUIRE(picture.table.rows.size() == 3);
  CHECK(picture.table.rows[1][2] == "between heights");
  CHECK(picture.table.rows[2] ==
        std::vector<std::string>{"15 Mar 2027", "23.0 cm", "foreseen", "22.5 to 23.5 cm"});
}

TEST_CASE("The label of a size worn covers no measurement") {
  auto curve = limb();
  // All over the left end of the size, so that a label there covers some of them.
  std::vector<care::LimbReading> left;
  for (int day = 200; day >= 140; day -= 5) {
    for (int tenths = 230; tenths <= 250; ++tenths) {
      left.push_back({today - days{day}, tenths / 10.0, false});
    }
  }
  curve.dots.insert(curve.dots.begin(), left.begin(), left.end());
  curve.dot_words.insert(curve.dot_words.begin(), left.size(), "measured");
  const auto picture = limb_picture(curve, "P-0001")(room());
  int labels = 0;
  for (const auto& mark : picture.marks) {
    const auto* box = std::get_if<Box>(&mark);
    if (box == nullptr || box->ink != Ink::paper) continue;
    ++labels;
    for (const auto& stop : picture.stops) {
      const double x = (stop.area.left + stop.area.right) / 2;
      const double y = (stop.area.top + stop.area.bottom) / 2;
      CHECK_FALSE(box->area.holds(x, y));
    }
  }
  CHECK(labels == 1);
}

TEST_CASE("Every point of a play is a stop, and its amounts stand in the table") {
  const auto picture = play_picture(plays(), "Money in stock, EUR")(room());
  REQUIRE(picture.stops.size() == 4);
  CHECK(picture.stops[1].id == "3");
  CHECK(picture.table.headings[1] == "Money in stock, EUR");
  CHECK(picture.table.rows[1] ==
        std::vector<std::string>{"Ours", "10,000", "100.0 %", "present target"});
  CHECK(picture.words.find("Ours: from 8,000 with 90.0 % on hand to 10,000 with 100.0 %.") !=
        std::string::npos);
}

TEST_CASE("Shares and errors stand in the table of a test") {
  const auto picture = score_picture(scores())(room());
  REQUIRE(picture.stops.size() == 2);
  CHECK(picture.table.rows[0] == std::vector<std::string>{"All kinds", "", "", "79 %",
                                                          "77 % to 80 %", "", "", "20", "70",
                                                          "22"});
}

TEST_CASE("Reactions come first in the order of their numbers, then what was worn") {
  const auto picture = worn_picture(worn(), "P-0001")(room());
  REQUIRE(picture.stops.size() == 3);
  CHECK(picture.stops[0].id == "reaction 1");
  CHECK(picture.stops[0].area.left < picture.stops[1].area.left);
  CHECK(picture.stops[2].words == "SN03-M was worn twice.");
  REQUIRE(picture.table.rows.size() == 4);
  CHECK(picture.table.rows[0][2] == "29 Jan 2026");
  CHECK(picture.table.rows[3][3] == "today");
}

TEST_CASE("Hatching and dots lie within an outline and fill it evenly") {
  // An L, whose notch must stay free; areas by the shoelace formula.
  const std::vector<Spot> outline{{0, 0}, {100, 0}, {100, 40}, {40, 40}, {40, 100}, {0, 100}};
  double length = 0;
  for (const auto& [a, b] : hatching(outline, 5)) {
    CHECK(a.x + a.y == doctest::Approx(b.x + b.y));
    const Spot middle{(a.x + b.x) / 2, (a.y + b.y) / 2};
    CHECK_FALSE((middle.x > 40.001 && middle.y > 40.001));
    length += std::hypot(a.x - b.x, a.y - b.y);
  }
  // Lines x + y = 5k are 5 / sqrt(2) apart.
  CHECK(length * 5 / std::sqrt(2.0) == doctest::Approx(area_of(outline)).epsilon(0.05));
  const auto dots = dots_within(outline, 4);
  for (const auto& dot : dots) CHECK_FALSE((dot.x > 40.001 && dot.y > 40.001));
  CHECK(static_cast<double>(dots.size()) * 16 == doctest::Approx(area_of(outline)).epsilon(0.1));
  CHECK(hatching({}, 5).empty());
  CHECK(dots_within(outline, 0).empty());
}

TEST_CASE("A table is copied with one line a row, whatever its cells hold") {
  const FigureTable table{{"Part", "Day"}, {{"Liner\tlong", "1"}, {"Pin\nshort", "2"}}};
  CHECK(tab_separated(table) == "Part\tDay\nLiner long\t1\nPin short\t2\n");
  const auto list = as_list(table);
  REQUIRE(list.size() == 2);
  CHECK(list.at(1).cells[1].text == "2");
}

TEST_CASE("A picture higher than a sheet goes on under its axis, and no stop is cut") {
  std::vector<StripEntry> entries;
  for (int i = 0; i < 60; ++i) {
    auto entry = strips()[1];
    entry.id = std::to_string(i);
    entries.push_back(entry);
  }
  const auto picture = life_picture(entries, "P-0001", today)(room());
  const auto sheets = sheets_of(picture, room(), 700);
  REQUIRE(sheets.size() > 2);
  double drawn = picture.fixed_top;
  for (const auto& sheet : sheets) {
    for (const auto& piece : sheet) {
      CHECK(piece.at + piece.to - piece.from <= 700.001);
      if (piece.picture.stops.empty() || piece.from < picture.fixed_top) continue;
      CHECK(piece.from == doctest::Approx(drawn));
      drawn = piece.to;
      for (const auto& stop : picture.stops) {
        CHECK_FALSE((stop.area.top < piece.to - 0.5 && stop.area.bottom > piece.to + 0.5));
      }
    }
  }
  CHECK(drawn == doctest::Approx(picture.height));
}

TEST_CASE("Lines are broken between words, and a word too wide has a line of its own") {
  const auto lines = wrapped("one two three\nincomprehensible end", room(), 56);
  CHECK(lines == std::vector<std::string>{"one two", "three", "incomprehensible", "end"});
}

}  // namespace picture_test
