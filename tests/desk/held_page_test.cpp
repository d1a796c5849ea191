#include "desk/held_page.hpp"

#include <doctest/doctest.h>

#include "desk/order_page.hpp"
#include "desk/sample_day.hpp"
#include "desk/suppliers_page.hpp"

namespace held_page_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

DayPtr day_with_held() {
  auto assessment = test_assessment();
  assessment.clinic.settings.currency = {"EUR"};
  assessment.held_needs = {{0, true, 0.05, "Reacts. A clinician decides what follows."},
                           {3, false, 0.4, "Outgrown. A clinician decides what follows."}};
  assessment.budget = Money{50000, {"EUR"}};
  assessment.held = {{test_line("B-28", "Auk", 2, 10000), supply::HeldFor::budget}};
  return std::make_shared<const Day>(std::move(assessment));
}

OrderLine ordered(const std::string& ref, int days_ago, int taken) {
  OrderLine line;
  line.supplier = {"Tern"};
  line.order_ref = ref;
  line.item = {"A-28"};
  line.ordered_on = test_today - days{days_ago};
  line.quantity = 2;
  line.state = OrderState::placed;
  if (taken > 0) {
    line.received_quantity = 2;
    line.received_on = line.ordered_on + days{taken};
  }
  return line;
}

}  // namespace

TEST_CASE("What is held back is listed with its reason, the likeliest to wear out first") {
  HeldPage page;
  CHECK(page.title() == "Held back");
  page.show(day_with_held());
  CHECK(page.title() == "Held back (3)");
  REQUIRE(page.needs().size() == 2);
  CHECK(page.needs().at(0).cells[0].text == "P-2  Bo Wren");
  CHECK(page.needs().at(0).cells[1].text == "left");
  CHECK(page.needs().at(0).cells[4].text == "size");
  CHECK(page.needs().at(0).cells[5].text == "nothing");
  CHECK(page.needs().at(0).cells[6].text == "40 %");
  CHECK(page.words(page.needs().at(0).id) == "Outgrown. A clinician decides what follows.");
  CHECK(page.unit_of(page.needs().at(0).id) == 3u);
  CHECK(page.needs().at(1).cells[4].text == "sensitivity");
  CHECK(page.needs_summary().find("1 has a chance of 10 %") != std::string::npos);
  CHECK(!page.unit_of("nothing"));
  page.needs().find("fieldmouse");
  CHECK(page.needs().size() == 1);
  CHECK(page.count() == 3);  // whatever is looked for
}

TEST_CASE("Lines left out for the budget are listed with what they would cost") {
  HeldPage page;
  page.show(day_with_held());
  REQUIRE(page.lines().size() == 1);
  CHECK(page.lines().at(0).cells[4].text == "200.00 EUR");
  CHECK(page.lines_summary().find("budget of 500.00 EUR") != std::string::npos);
  CHECK(page.budget_text() == "500.00");
  OrderPage orders;
  orders.show(day_with_held());
  CHECK(orders.held_back() == 3);
  CHECK(orders.headline() ==
        "0 lines must be ordered today; 1 more is left out to keep to the budget.");
}

TEST_CASE("A budget is an amount in the clinic's currency, or nothing") {
  HeldPage page;
  page.show(day_with_held());
  CHECK(page.read_budget("1200,50").value() == Money{120050, {"EUR"}});
  CHECK(!page.read_budget("").value());
  CHECK(page.read_budget("plenty").error().sentence.find("'plenty' is not an amount in EUR") !=
        std::string::npos);
  CHECK(!page.read_budget("-5"));
}

TEST_CASE("Suppliers are listed with the days they take, and what they still owe") {
  auto assessment = test_assessment();
  auto& lines = assessment.clinic.order_lines;
  // Ten days are quoted (sample_day.hpp); fourteen are taken, by hand.
  for (int i = 0; i < 6; ++i)
    lines.push_back(ordered("O-" + std::to_string(i), 100 + i, 14 + i % 2));
  lines.push_back(ordered("O-9", 30, 0));
  SuppliersPage page;
  page.show(std::make_shared<const Day>(std::move(assessment)));
  REQUIRE(page.suppliers().size() == 1);
  const auto& row = page.suppliers().at(0);
  CHECK(row.cells[1].text == "late");
  CHECK(row.cells[2].text == "14.5");
  CHECK(row.cells[3].text == "10.0");
  CHECK(row.cells[5].text == "6");
  CHECK(row.cells[6].text == "5 days late");
  CHECK(row.strong);
  CHECK(page.summary().find("1 supplier is later") == 0);
  CHECK(page.lines().size() == 0);
  page.choose("Tern");
  REQUIRE(page.lines().size() == 1);
  CHECK(page.lines().at(0).strong);
  const auto order = page.order_of(page.lines().at(0).id);
  REQUIRE(order);
  CHECK(order->ref == "O-9");
  CHECK(page.words().find("Tern: late: 14.5 days") == 0);
}

}  // namespace held_page_test
