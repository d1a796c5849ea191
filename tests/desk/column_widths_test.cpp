#include "desk/column_widths.hpp"

#include <doctest/doctest.h>

namespace column_widths_test {

using namespace sparewell::desk;

namespace {

const std::vector<ColumnRoom> columns{{100, 60, 0}, {100, 60, 1}, {200, 80, 2}};

}  // namespace

TEST_CASE("Columns have the width they want when it fits exactly") {
  CHECK(column_widths(columns, 400) == std::vector{100, 100, 200});
}

TEST_CASE("Width left over goes to the stretching columns, and none of it is lost") {
  CHECK(column_widths(columns, 700) == std::vector{100, 200, 400});
  CHECK(column_widths(columns, 501) == std::vector{100, 133, 268});
}

TEST_CASE("Missing width is taken from the stretching columns, but not below their least") {
  CHECK(column_widths(columns, 320) == std::vector{100, 80, 140});
  CHECK(column_widths(columns, 240) == std::vector{100, 60, 80});
  CHECK(column_widths(columns, 100) == std::vector{100, 60, 80});
}

TEST_CASE("A table without stretching columns keeps its widths") {
  CHECK(column_widths({{50, 20, 0}}, 900) == std::vector{50});
  CHECK(column_widths({}, 900).empty());
}

}  // namespace column_widths_test
