#include "supply/picking.hpp"

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace picking_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

StockLevel level(const std::string& lot, std::optional<Date> use_by, int quantity,
                 const std::string& place = "main store") {
  return {{{"L1"}, lot, use_by}, place, quantity};
}

}  // namespace

TEST_CASE("The lot that expires first is taken first, lots without a use-by date last") {
  const std::vector<StockLevel> shelf{level("none", std::nullopt, 5),
                                      level("late", today + days{90}, 2),
                                      level("soon", today + days{9}, 3)};
  const auto picking = first_expiry_first_out(shelf, 7, today, "main store");
  REQUIRE(picking.lots.size() == 3);
  CHECK(picking.lots[0] == level("soon", today + days{9}, 3));
  CHECK(picking.lots[1] == level("late", today + days{90}, 2));
  CHECK(picking.lots[2] == level("none", std::nullopt, 2));
  CHECK(picking.missing == 0);
}

TEST_CASE("A lot may be used on its use-by date and not after; what is missing is said") {
  const std::vector<StockLevel> shelf{level("old", today - days{1}, 4), level("today", today, 1)};
  const auto picking = first_expiry_first_out(shelf, 3, today, "main store");
  REQUIRE(picking.lots.size() == 1);
  CHECK(picking.lots[0].lot.lot == "today");
  CHECK(picking.missing == 2);
  CHECK(picking.expired == 4);
}

TEST_CASE("Other places, quarantine and places that are no store are not picked from") {
  const std::vector<Place> places{{"van", PlaceSort::in_transit, ""},
                                  {"cage", PlaceSort::quarantine, ""}};
  const std::vector<StockLevel> shelf{
      level("a", std::nullopt, 1, "branch"), level("b", std::nullopt, 2, "van"),
      level("c", std::nullopt, 4, "cage"), level("d", std::nullopt, 8, "quarantine"),
      level("e", std::nullopt, 16)};
  CHECK(first_expiry_first_out(shelf, 2, today, "branch", places).missing == 1);
  CHECK(first_expiry_first_out(shelf, 2, today, "cage", places).missing == 2);
  CHECK(first_expiry_first_out(shelf, 2, today, "cage", places).held_back == 4);
  const auto anywhere = first_expiry_first_out(shelf, 99, today, "", places);
  CHECK(anywhere.lots.size() == 2);
  CHECK(anywhere.missing == 99 - 17);
  CHECK(anywhere.held_back == 12);
}

TEST_CASE("Alike lots go by lot number, whatever the order of the levels") {
  std::vector<StockLevel> shelf{level("B", today, 1), level("A", today, 1), level("C", today, 0)};
  const auto picking = first_expiry_first_out(shelf, 1, today, "main store");
  REQUIRE(picking.lots.size() == 1);
  CHECK(picking.lots[0].lot.lot == "A");
  CHECK(first_expiry_first_out(shelf, 0, today, "main store").lots.empty());
  CHECK(first_expiry_first_out(shelf, -1, today, "main store").missing == 0);
}

}  // namespace picking_test
