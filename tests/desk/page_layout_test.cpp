#include "desk/printing/page_layout.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

namespace page_layout_test {

using namespace sparewell::desk;

// Every letter is one unit wide, so that widths and breaks are worked out by hand.
namespace {

PaperSize paper(double width, double height) {
  return {width, height, 1, 1,
          [](const std::string& text, PrintFont) { return static_cast<double>(text.size()); }};
}

PrintedTable table(int rows) {
  PrintedTable made{
      "Parts", {{"Item", 10, Align::left, ""}, {"Pieces", 6, Align::right, ""}}, {}, "Nothing."};
  for (int i = 1; i <= rows; ++i) made.rows.push_back({{fmt::format("LN-{}", i), "1"}, false});
  return made;
}

int count_of(const PrintedPage& page, const std::string& text) {
  int found = 0;
  for (const auto& each : page.texts) found += each.text == text ? 1 : 0;
  return found;
}

}  // namespace

TEST_CASE("Columns that have room stay on one line") {
  CHECK(paper_columns(table(9), paper(40, 20)) == std::vector<double>{4, 6});
}

TEST_CASE("Only wide columns give way where there is too little room") {
  PrintedTable wide{"",
                    {{"Item", 4, Align::left, ""}, {"Why", 30, Align::left, ""}},
                    {{{"LN-1", "worn by two patients soon"}, false}},
                    ""};
  // Room for 15 letters, one gap: "LN-1" keeps 4, the reason gets the other 10.
  CHECK(paper_columns(wide, paper(15, 20)) == std::vector<double>{4, 10});
  CHECK(wrapped("worn by two patients soon", 10, paper(15, 20), PrintFont::text) ==
        std::vector<std::string>{"worn by", "two", "patients", "soon"});
}

TEST_CASE("Words too long for their column are broken between characters") {
  CHECK(wrapped("abcdefg", 3, paper(3, 9), PrintFont::text) ==
        std::vector<std::string>{"abc", "def", "g"});
  // Two bytes a letter: none is torn apart.
  CHECK(wrapped("\u00e4\u00f6\u00fc", 3, paper(3, 9), PrintFont::text) ==
        std::vector<std::string>{"\u00e4", "\u00f6", "\u00fc"});
  CHECK(wrapped("", 3, paper(3, 9), PrintFont::text) == std::vector<std::string>{""});
}

TEST_CASE("A list goes on over pages with its headings, no row is lost, and pages are numbered") {
  const auto pages = lay_out({"Shelf", "Clinic", "25 November", {}, {table(30)}}, paper(60, 20));
  REQUIRE(pages.size() > 1);
  int rows = 0;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    CHECK(count_of(pages[i], "Item") == 1);
    CHECK(count_of(pages[i], fmt::format("Page {} of {}", i + 1, pages.size())) == 1);
    for (int row = 1; row <= 30; ++row) rows += count_of(pages[i], fmt::format("LN-{}", row));
    for (const auto& text : pages[i].texts) CHECK(text.y + 1 <= 20);
  }
  CHECK(rows == 30);
  CHECK(count_of(pages[0], "Parts") == 1);
  CHECK(count_of(pages[1], "Parts (continued)") == 1);
}

TEST_CASE("A list without rows says so, and numbers stand at the right edge of their column") {
  const auto empty = lay_out({"Shelf", "", "25 November", {"A note."}, {table(0)}}, paper(60, 20));
  REQUIRE(empty.size() == 1);
  CHECK(count_of(empty[0], "Nothing.") == 1);
  CHECK(count_of(empty[0], "A note.") == 1);
  const auto page = lay_out({"Shelf", "", "25 November", {}, {table(1)}}, paper(60, 20)).front();
  for (const auto& text : page.texts) {
    // 4 for "Item", a gap of 1, 6 for "Pieces".
    if (text.text == "1") CHECK(text.x == 11);
  }
}

TEST_CASE("What is printed is what the table shows, in its order") {
  Table shown{{{"Item", 10, Align::left, ""}}};
  shown.fill({{"a", {{"A", 1.0}}, "a"}, {"b", {{"B", 2.0}}, "b"}, {"c", {{"C", 3.0}}, "c"}});
  shown.sort_by(0, false);
  shown.find("");
  const auto made = printed(shown);
  REQUIRE(made.rows.size() == 3);
  CHECK(made.rows.front().cells == std::vector<std::string>{"C"});
}

}  // namespace page_layout_test
