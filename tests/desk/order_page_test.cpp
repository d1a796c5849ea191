#include "desk/order_page.hpp"

#include <doctest/doctest.h>

#include "desk/sample_day.hpp"
#include "desk/supplier_totals.hpp"

namespace order_page_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

DayPtr day_with(std::vector<supply::ProposalLine> proposal) {
  auto assessment = test_assessment();
  assessment.proposal = std::move(proposal);
  return std::make_shared<const Day>(std::move(assessment));
}

}  // namespace

TEST_CASE("Every line is due, with its cost and why in a clause") {
  OrderPage page;
  page.show(day_with({test_line("B-28", "Auk", 2, 1000), test_line("A-28", "Tern", 1, 2000)}));
  REQUIRE(page.lines().size() == 2);
  CHECK(page.lines().at(0).cells[0].text == "Auk");
  CHECK(page.lines().at(0).cells[1].text == "B-28");
  CHECK(page.lines().at(0).cells[4].text == "20.00 EUR");
  CHECK(page.lines().at(0).cells[6].text == "12 %");
  CHECK(page.headline() == "2 lines must be ordered today.");
  page.show(day_with({test_line("B-28", "Auk", 2, 1000)}));
  CHECK(page.headline() == "1 line must be ordered today.");
}

TEST_CASE(
    "A page without lines says that nothing is to be ordered, and when the next order day is") {
  OrderPage page;
  page.show(day_with({}));
  CHECK_FALSE(page.anything());
  CHECK(page.headline() ==
        "Nothing is to be ordered today. The next order day is Thu 26 Nov 2026.");
  CHECK(page.empty_words().starts_with("Nothing is to be ordered today"));
}

TEST_CASE("Supplier totals add goods, name what has no price, and say what free freight lacks") {
  const auto day =
      day_with({test_line("A-28", "Tern", 3, 10000), test_line("B-28", "Auk", 2, std::nullopt)});
  const auto totals = supplier_totals(*day);
  REQUIRE(totals.size() == 2);
  CHECK(totals[0].goods == std::vector<Money>{{30000, {"EUR"}}});
  CHECK(totals[0].freight == Money{1500, {"EUR"}});
  CHECK(totals[0].short_of_free_freight == Money{20000, {"EUR"}});
  CHECK(totals[1].lines_without_price == 1);
  CHECK_FALSE(totals[1].freight);
}

TEST_CASE("Freight is free from the supplier's limit upwards") {
  const auto totals = supplier_totals(*day_with({test_line("A-28", "Tern", 5, 10000)}));
  CHECK(totals[0].freight == Money{0, {"EUR"}});
  CHECK_FALSE(totals[0].short_of_free_freight);
}

TEST_CASE("A chosen line shows who needs it, by reference and name") {
  auto line = test_line("A-28", "Tern", 1, 2000);
  line.reason.needs = {
      {{"P-1"}, Side::right, 0, 0.4, 0, test_today + days{5}, test_today + days{60}, {}}};
  OrderPage page;
  page.show(day_with({line}));
  const auto detail = page.detail(page.lines().at(0).id);
  CHECK(detail.title == "A-28  Locking liner, size 28");
  REQUIRE(detail.needs.size() == 1);
  CHECK(detail.needs[0].cells[0].text == "P-1  Ana Fieldmouse");
  CHECK(detail.needs[0].cells[2].text == "40 %");
}

TEST_CASE("A line that has gone has no detail") {
  OrderPage page;
  page.show(day_with({}));
  CHECK(page.detail("gone").title.empty());
}

}  // namespace order_page_test
