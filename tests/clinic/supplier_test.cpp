#include "clinic/supplier.hpp"

#include <doctest/doctest.h>

namespace supplier_test {

using namespace sparewell;

// 2026-11-25 is a Wednesday.
const Date wednesday = make_date(2026, 11, 25);

TEST_CASE("Order days are read as weekday names, ISO 8601 numbers or an interval") {
  CHECK(parse_order_days("Mon;Thu") == OrderDays{0b0001001, 0});
  CHECK(parse_order_days("monday; THURSDAY") == OrderDays{0b0001001, 0});
  CHECK(parse_order_days("1;4") == OrderDays{0b0001001, 0});
  CHECK(parse_order_days("14") == OrderDays{0, 14});
  CHECK(parse_order_days("") == OrderDays{});
  CHECK_FALSE(parse_order_days("Mon;Someday"));
  CHECK_FALSE(parse_order_days("0"));
  CHECK_FALSE(parse_order_days("Mon;"));
}

TEST_CASE("The text of order days reads back as the same days") {
  for (const char* text : {"Mon;Thu", "14", ""}) {
    CHECK(order_days_text(*parse_order_days(text)) == text);
  }
}

TEST_CASE("The next order day is after today, even when today is one") {
  CHECK(next_order_day(*parse_order_days("Wed"), wednesday) == wednesday + days{7});
  CHECK(next_order_day(*parse_order_days("Mon;Thu"), wednesday) == wednesday + days{1});
  CHECK(next_order_day(*parse_order_days("10"), wednesday) == wednesday + days{10});
  CHECK(next_order_day(OrderDays{}, make_date(2026, 11, 27)) == make_date(2026, 11, 30));
  CHECK(is_order_day(*parse_order_days("Wed"), wednesday));
  CHECK_FALSE(is_order_day(*parse_order_days("Thu"), wednesday));
}

}  // namespace supplier_test
