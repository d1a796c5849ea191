#include "supply/price_list.hpp"

#include <doctest/doctest.h>

#include "supply/clinic_made.hpp"

namespace price_list_test {

using namespace sparewell;
using namespace sparewell::supply;
using namespace sparewell::supply::testing;

namespace {

const SupplierName supplier{"Example Supplies"};

Money eur(std::int64_t cents) {
  return {cents, {"EUR"}};
}

/// L1 T-1 100.00, L2 T-2 in packs of 6 for 2.00 with a break, L3 without cost, X1 of another.
std::vector<Item> catalogue() {
  std::vector<Item> items{stocked_item("L1"), stocked_item("L2"), stocked_item("L3"),
                          stocked_item("X1", "Other")};
  items[0].supplier_item = "T-1";
  items[0].gtin = "02900000010001";
  items[1].supplier_item = "T-2";
  items[1].unit_cost = eur(200);
  items[1].pack_size = 6;
  items[1].price_breaks = {{60, eur(180)}};
  items[2].supplier_item = "T-3";
  items[2].unit_cost.reset();
  items[3].supplier_item = "T-1";
  return items;
}

PriceRow row(int number, std::string supplier_item, std::optional<Money> cost) {
  PriceRow made;
  made.row = number;
  made.supplier_item = std::move(supplier_item);
  made.unit_cost = cost;
  return made;
}

std::vector<PriceDoubt> doubts(const PriceRow& of) {
  const auto found = compare_prices({of}, catalogue(), supplier);
  REQUIRE(found.changes.size() == 1);
  return found.changes[0].doubts;
}

}  // namespace

TEST_CASE("A changed price is told with the values before, and what the list leaves out stays") {
  auto given = row(5, "T-1", eur(10400));
  given.lead_days = 9;
  given.min_order = 2;
  const auto found = compare_prices({given, row(6, "T-3", eur(500))}, catalogue(), supplier);
  REQUIRE(found.changes.size() == 2);
  const auto& change = found.changes[0];
  CHECK(change.before == catalogue()[0]);
  CHECK(change.after.unit_cost == eur(10400));
  CHECK(change.after.lead_days == 9);
  CHECK(change.after.min_order == 2);
  CHECK(change.after.pack_size == 1);
  CHECK(change.doubts.empty());
  CHECK(*price_ratio(change.before.unit_cost, change.after.unit_cost) == doctest::Approx(1.04));
  CHECK(found.changes[1].doubts.empty());
  REQUIRE(found.missing.size() == 1);
  CHECK(found.missing[0].code.text == "L2");
}

TEST_CASE("Rows are matched by part number, code or GTIN, and contradictions are refused") {
  PriceRow by_code = row(2, "", eur(9000));
  by_code.item_code = "L1";
  CHECK(compare_prices({by_code}, catalogue(), supplier).changes.size() == 1);
  PriceRow by_gtin = row(2, "", eur(9000));
  by_gtin.gtin = "2900000010001";  // a spreadsheet drops the zero in front
  CHECK(compare_prices({by_gtin}, catalogue(), supplier).changes.size() == 1);

  PriceRow torn = row(3, "T-2", eur(9000));
  torn.item_code = "L1";
  const auto contradicted = compare_prices({torn}, catalogue(), supplier);
  REQUIRE(contradicted.refused.size() == 1);
  CHECK(contradicted.refused[0].row == 3);
  CHECK(contradicted.refused[0].field == "item_code");

  const auto twice =
      compare_prices({row(2, "T-1", eur(1)), row(3, "T-1", eur(2))}, catalogue(), supplier);
  CHECK(twice.refused.size() == 1);
  CHECK(compare_prices({row(2, "T-9", eur(1))}, catalogue(), supplier).unknown.size() == 1);
  auto alike = catalogue();
  alike[1].supplier_item = "T-1";
  CHECK(compare_prices({row(2, "T-1", eur(1))}, alike, supplier).refused.size() == 1);
}

TEST_CASE("Prices that a person must look at carry their doubts") {
  using enum PriceDoubt;
  CHECK(doubts(row(2, "T-1", eur(15000))).empty());
  CHECK(doubts(row(2, "T-1", eur(15001))) == std::vector{large_change});
  CHECK(doubts(row(2, "T-1", eur(4999))) == std::vector{large_change});
  CHECK(doubts(row(2, "T-1", eur(0))) == std::vector{zero});
  CHECK(doubts(row(2, "T-1", Money{10000, {"USD"}})) == std::vector{currency});
  // Packs of 6 at 2.00 a piece: 11.50 is about a pack.
  CHECK(doubts(row(2, "T-2", eur(1150))) == std::vector{large_change, per_pack});
  // A piece for 0.34 is about a sixth of 2.00; the break of the catalogue is then dearer.
  CHECK(doubts(row(2, "T-2", eur(34))) == std::vector{large_change, per_piece, price_break});
  auto breaks = row(2, "T-2", eur(210));
  breaks.price_breaks = std::vector<PriceBreak>{{60, eur(190)}, {120, eur(195)}};
  CHECK(doubts(breaks) == std::vector{price_break});
  breaks.price_breaks = std::vector<PriceBreak>{{60, eur(80)}};
  CHECK(doubts(breaks) == std::vector{price_break});
  breaks.price_breaks = std::vector<PriceBreak>{{60, eur(185)}};
  CHECK(doubts(breaks).empty());
}

TEST_CASE("Descriptions are shown and taken only when asked; unchanged rows are counted") {
  auto given = row(2, "T-2", eur(200));
  given.description = "Sock";
  const auto shown = compare_prices({given, row(3, "T-1", eur(10000))}, catalogue(), supplier);
  REQUIRE(shown.changes.size() == 1);
  CHECK_FALSE(shown.changes[0].changes_item());
  CHECK(shown.changes[0].other_description == "Sock");
  CHECK(shown.unchanged == 1);
  const auto taken = compare_prices({given}, catalogue(), supplier, true);
  CHECK(taken.changes[0].after.description == "Sock");
  CHECK(compare_prices({row(2, "T-2", eur(210))}, catalogue(), supplier)
            .changes[0]
            .keeps_price_breaks);
}

}  // namespace price_list_test
