#include "clinic/date.hpp"

#include <doctest/doctest.h>

namespace date_test {

using namespace sparewell;

TEST_CASE("An ISO 8601 date is read and written unchanged") {
  for (const char* text : {"2026-11-25", "1999-12-31", "2024-02-29"}) {
    const auto date = parse_iso_date(text);
    REQUIRE(date);
    CHECK(iso_text(*date) == text);
  }
}

TEST_CASE("Days that do not exist and other forms are refused") {
  for (const char* text : {"2023-02-29", "2026-13-01", "2026-1-2", "26-11-25", "25.11.2026", "",
                           "2026-11-25 ", "2026-11-25T00:00", "0001-01-01"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_iso_date(text));
  }
}

TEST_CASE("A declared pattern reads its own form only") {
  const auto pattern = DatePattern::from_text("DD.MM.YYYY");
  REQUIRE(pattern);
  CHECK(pattern->parse("03.04.2026") == make_date(2026, 4, 3));
  CHECK_FALSE(pattern->parse("2026-04-03"));
  CHECK_FALSE(pattern->parse("3.4.2026"));
  const auto loose = DatePattern::from_text("M/D/YYYY");
  REQUIRE(loose);
  CHECK(loose->parse("4/3/2026") == make_date(2026, 4, 3));
  CHECK(loose->parse("12/31/2026") == make_date(2026, 12, 31));
  CHECK_FALSE(loose->parse("31/12/2026"));
}

TEST_CASE("A pattern without year, month and day is refused with a sentence") {
  for (const char* text : {"", "DD.MM", "YYYY-MM-MM", "YY-MM-DD", "DDD.MM.YYYY"}) {
    CAPTURE(text);
    CHECK_FALSE(DatePattern::from_text(text));
  }
  CHECK(DatePattern::from_text("DD.MM").error().sentence.find("YYYY") != std::string::npos);
}

}  // namespace date_test
