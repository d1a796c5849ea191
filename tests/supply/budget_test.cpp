#include "supply/budget.hpp"

#include <doctest/doctest.h>

namespace budget_test {

using namespace sparewell;
using namespace sparewell::supply;

namespace {

const Currency euro{"EUR"};

/// Two pieces are wanted of it, and two are surely needed.
WantedLine wanted(const char* item, int in_transit) {
  WantedLine made;
  made.line.supplier = {"North Supplies"};
  made.line.item = {item};
  made.line.quantity = 2;
  made.line.unit_cost = Money{10000, euro};
  made.line.in_transit = in_transit;
  made.needed = binomial(2, 1);
  return made;
}

}  // namespace

// By reasoning: a piece lowers what is expected to be missing by one only while fewer pieces are
// there and coming than are needed.
TEST_CASE("A budget goes to what is missing, and not to what is on its way between places") {
  Clinic clinic;
  for (const char* code : {"A", "B"}) {
    Item item;
    item.code = {code};
    item.unit_cost = Money{10000, euro};
    clinic.items.push_back(item);
  }
  const ClinicIndex index{clinic};
  const auto made = within_budget({wanted("A", 2), wanted("B", 0)}, index, Money{20000, euro});
  REQUIRE(made.lines.size() == 1);
  CHECK(made.lines[0].item.text == "B");
  CHECK(made.lines[0].quantity == 2);
  REQUIRE(made.held.size() == 1);
  CHECK(made.held[0].line.item.text == "A");
}

}  // namespace budget_test
