#include "desk/table.hpp"

#include <doctest/doctest.h>

namespace table_test {

using namespace sparewell::desk;

namespace {

TableRow row(const std::string& id, const std::string& word, std::optional<double> number,
             unsigned marks = 0) {
  return {id, {{word, std::nullopt}, {"", number}}, folded(word), marks, false};
}

std::string shown(const Table& table) {
  std::string ids;
  for (std::size_t i = 0; i < table.size(); ++i) ids += table.at(i).id;
  return ids;
}

Table filled() {
  Table table{{{"Word", 9, Align::left, ""}, {"Number", 9, Align::right, ""}}};
  table.fill({row("a", "Pear", 2), row("b", "apple", std::nullopt), row("c", "Fig", 10),
              row("d", "fig", 2, 1)});
  return table;
}

}  // namespace

TEST_CASE("Words are ordered without regard to case, and equal ones keep their natural order") {
  auto table = filled();
  table.sort_by(0, true);
  CHECK(shown(table) == "bcda");
  table.sort_by(0, false);
  CHECK(shown(table) == "acdb");
}

TEST_CASE("Numbers are ordered by size, and rows without one come last both ways") {
  auto table = filled();
  table.sort_by(1, true);
  CHECK(shown(table) == "adcb");
  table.sort_by(1, false);
  CHECK(shown(table) == "cadb");
}

TEST_CASE("Every typed word must be found, in any order and case") {
  auto table = filled();
  table.find("  FIG ");
  CHECK(shown(table) == "cd");
  table.find("fig pear");
  CHECK(table.size() == 0);
  table.find("");
  CHECK(table.size() == 4);
}

TEST_CASE("Filter, marks and order stay in force when the table is filled again") {
  auto table = filled();
  table.find("fig");
  table.require(1);
  table.sort_by(1, true);
  table.fill({row("x", "fig", 5, 1), row("y", "fig", 3, 3), row("z", "fig", 1, 2)});
  CHECK(shown(table) == "yx");
  CHECK(table.position_of("x") == 1);
  CHECK_FALSE(table.position_of("z"));
}

}  // namespace table_test
