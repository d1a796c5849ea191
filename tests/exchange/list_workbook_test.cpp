#include "exchange/list_workbook.hpp"

#include <doctest/doctest.h>

#include "exchange/list_made.hpp"
#include "exchange/order_made.hpp"
#include "exchange/sheet/sheet_table.hpp"

namespace list_workbook_test {

using namespace sparewell;
using namespace sparewell::exchange;
using namespace sparewell::exchange::testing;
using Held = SheetCell::Kind;

namespace {

SheetTable written(const char* folder, const std::string& sheet = {}) {
  const auto file = fresh_folder(folder) / "list.xlsx";
  write_list_workbook(small_list(), file);
  const auto read = read_sheet(file, sheet);
  REQUIRE(read.has_value());
  return *read;
}

const SheetRow& row_beginning(const SheetTable& table, const std::string& text) {
  for (const auto& row : table.rows) {
    if (row.at(0).text == text) return row;
  }
  FAIL("no row begins with ", text);
  return table.rows.front();
}

}  // namespace

TEST_CASE("Numbers, dates and text of a list are what they are, formulas have their values") {
  const auto table = written("list-cells");
  const auto& row = row_beginning(table, "L-1");
  CHECK(row.at(1).kind == Held::date);
  CHECK(row.at(1).date == make_date(2027, 1, 31));
  CHECK(row.at(2).kind == Held::number);
  CHECK(row.at(3).number == 412.5);
  CHECK(row.at(4).number == 1237.5);  // 3 * 412.50 by hand
  CHECK(row.at(6).number == 3);
  CHECK(row.at(7).blank());
  CHECK(row.at(9).number == 3.25);
  CHECK(row_beginning(table, "=1+1").at(0).kind == Held::text);
  CHECK(row_beginning(table, "N-1").at(1).text == "not recorded");
  CHECK(row_beginning(table, "N-1").at(4).blank());
}

TEST_CASE("Each currency has its total, and the other sheets are there") {
  const auto table = written("list-totals");
  // By hand: 1237.50 + 12 * 19.99 = 1477.38; 2 * 5000.
  double eur = 0;
  double jpy = 0;
  for (const auto& row : table.rows) {
    if (row.at(0).text == "Total") (row.at(5).text == "EUR" ? eur : jpy) = row.at(4).number;
  }
  CHECK(eur == doctest::Approx(1477.38));
  CHECK(jpy == 10000);
  CHECK(row_beginning(table, "Date").at(1).date == make_date(2026, 11, 25));
  CHECK(row_beginning(table, "Do not hand out what is expired.").number > 0);
  CHECK(row_beginning(written("list-other", "Orders"), "PO-1").number > 0);
}

}  // namespace list_workbook_test
