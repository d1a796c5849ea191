#include "exchange/barcode/short_date.hpp"

#include <doctest/doctest.h>

namespace short_date_test {

using namespace sparewell;
using namespace sparewell::exchange;

namespace {

const Date today = make_date(2026, 11, 25);

std::optional<Date> gs1(std::string_view text) {
  return date_in_digits(text, "YYMMdd", today);
}

}  // namespace

TEST_CASE("The century of two digits moves with the year") {
  // GS1 General Specifications 7.12; the years are computed from its rule.
  const auto year = [](int digits, int now) {
    return year_of_two_digits(digits, make_date(now, 6, 1));
  };
  CHECK(year(0, 2026) == 2000);
  CHECK(year(76, 2026) == 2076);
  CHECK(year(77, 2026) == 1977);
  CHECK(year(99, 2026) == 1999);
  CHECK(year(0, 2060) == 2100);
  CHECK(year(10, 2060) == 2110);
  CHECK(year(11, 2060) == 2011);
  CHECK(year(99, 2060) == 2099);
  CHECK(year(0, 1998) == 2000);
  CHECK(year(48, 1998) == 2048);
  CHECK(year(49, 1998) == 1949);
  CHECK(year(99, 1998) == 1999);
  for (int now = 1950; now <= 2150; ++now) {
    for (int digits = 0; digits < 100; ++digits) {
      CHECK(year(digits, now) % 100 == digits);
      CHECK(year(digits, now) - now <= 50);
      CHECK(year(digits, now) - now >= -49);
    }
  }
}

TEST_CASE("Day 00 is the last day of its month") {
  // The standard's text on (17): 210300 equals 210331.
  CHECK(gs1("210300") == make_date(2021, 3, 31));
  CHECK(gs1("210300") == gs1("210331"));
  CHECK(gs1("280200") == make_date(2028, 2, 29));
  CHECK(gs1("270200") == make_date(2027, 2, 28));
}

TEST_CASE("What no calendar has is no date") {
  for (const auto* text : {"211301", "210001", "210230", "210432", "21030", "2103011", "21O301"}) {
    CAPTURE(text);
    CHECK_FALSE(gs1(text));
  }
  CHECK_FALSE(date_in_digits("010026", "MMDDYY", today));
  CHECK_FALSE(date_in_digits("26366", "YYJJJ", today));
  CHECK_FALSE(date_in_digits("26000", "YYJJJ", today));
  CHECK_FALSE(date_in_digits("26010124", "YYMMDDHH", today));
  CHECK_FALSE(date_in_digits("18991231", "YYYYMMDD", today));
}

TEST_CASE("Days of the year and other orders are read") {
  CHECK(date_in_digits("20015", "YYJJJ", today) == make_date(2020, 1, 15));  // ANSI/HIBC 2.6
  CHECK(date_in_digits("28366", "YYJJJ", today) == make_date(2028, 12, 31));
  CHECK(date_in_digits("0928", "MMYY", today) == make_date(2028, 9, 30));
  CHECK(date_in_digits("092805", "MMDDYY", today) == make_date(2005, 9, 28));
  CHECK(date_in_digits("20111212", "YYYYMMDD", today) == make_date(2011, 12, 12));
}

}  // namespace short_date_test
