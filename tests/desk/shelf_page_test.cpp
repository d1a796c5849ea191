#include "desk/shelf_page.hpp"

#include <doctest/doctest.h>

#include "desk/sample_day.hpp"

namespace shelf_page_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

StockLevel level(const std::string& item, const std::string& place, int quantity,
                 std::optional<Date> use_by) {
  return {{{item}, "L1", use_by}, place, quantity};
}

DayPtr day_with(std::vector<StockLevel> shelf, std::vector<supply::ProposalLine> proposal = {}) {
  auto assessment = test_assessment();
  assessment.clinic.shelf = std::move(shelf);
  assessment.proposal = std::move(proposal);
  return std::make_shared<const Day>(std::move(assessment));
}

}  // namespace

TEST_CASE("Expired and quarantined pieces do not count as on hand") {
  const auto day = day_with({level("A-28", "main store", 3, test_today + days{400}),
                             level("A-28", "main store", 2, test_today - days{1}),
                             level("A-28", "Quarantine", 1, std::nullopt),
                             level("A-28", "room 2", 4, test_today)});
  const auto count = shelf_counts(*day).at({"A-28"});
  CHECK(count.usable == 7);
  CHECK(count.soon == 4);
  CHECK(count.expired == 2);
  CHECK(count.quarantined == 1);
  CHECK(count.use_by == test_today);
  ShelfPage page;
  page.show(day);
  CHECK(page.table().at(*page.table().position_of("A-28")).cells[7].text ==
        "2 expired, 1 in quarantine and 4 to be used soon");
}

TEST_CASE("What is low can be asked for alone") {
  ShelfPage page;
  page.show(day_with({level("B-28", "main store", 5, std::nullopt)},
                     {test_line("A-28", "Tern", 2, 100)}));
  page.table().require(ShelfPage::is_low);
  REQUIRE(page.table().size() == 1);
  CHECK(page.table().at(0).id == "A-28");
  CHECK(page.table().at(0).cells[0].text == "Out: order");
}

TEST_CASE("A chosen item shows its lots in words and its open orders") {
  auto assessment = test_assessment();
  assessment.clinic.shelf = {level("A-28", "main store", 2, test_today - days{1})};
  OrderLine open;
  open.order_ref = "SW-2026-0001";
  open.supplier = {"Tern"};
  open.item = {"A-28"};
  open.ordered_on = test_today - days{12};
  open.quantity = 4;
  open.received_quantity = 1;
  assessment.clinic.order_lines = {open};
  ShelfPage page;
  page.show(std::make_shared<const Day>(std::move(assessment)));
  const auto detail = page.detail("A-28");
  REQUIRE(detail.lots.size() == 1);
  CHECK(detail.lots[0].cells[4].text == "Expired: do not hand out");
  REQUIRE(detail.open_orders.size() == 1);
  CHECK(detail.open_orders[0].cells[5].text == "3");
  CHECK(detail.summary.find("Not to be handed out: 2 expired.") != std::string::npos);
}

}  // namespace shelf_page_test
