#include "desk/what_if_page.hpp"

#include <doctest/doctest.h>

namespace what_if_page_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

const Date today = make_date(2026, 11, 25);

supply::Outcome outcome() {
  supply::Outcome made;
  made.lines = 12;
  made.pieces = 1340;
  made.goods = {{Currency{"EUR"}, 123450}, {Currency{"USD"}, 8000}};
  made.without_price = 1;
  made.short_before = 0.031;
  made.short_after = 1.26;
  made.items_below_target = 1;
  made.at_risk = {{{"LN-3"}, 0.184, today + days{12}, {{"LN-7"}, {"LN-8"}}}};
  return made;
}

}  // namespace

TEST_CASE("Each question is one more decision beside ordering today") {
  ClinicSettings settings;
  settings.costs.shortage = Money{100, {}};
  const auto made = decisions(settings, today, {{7}, {0.9}, {{"Tern"}}});
  REQUIRE(made.size() == 4);
  CHECK(made[0].title == "Order today");
  CHECK(made[1].title == "Wait 7 days");
  CHECK(made[1].policy.order_on == today + days{7});
  CHECK(made[2].title == "90 % target");
  CHECK(made[2].policy.service_target == 0.9);
  CHECK(!made[2].policy.costs.shortage);
  CHECK(made[3].title == "Without Tern");
  CHECK(made[3].policy.without.contains({"Tern"}));
}

TEST_CASE("A budget holds for every decision, and the first one says so") {
  const Money budget{50000, {"EUR"}};
  const auto made = decisions({}, today, {{7}, {}, {}}, budget);
  REQUIRE(made.size() == 2);
  CHECK(made[0].title == "Order today for at most 500.00 EUR");
  CHECK(made[0].policy.budget == budget);
  CHECK(made[1].title == "Wait 7 days");
  CHECK(made[1].policy.budget == budget);
}

TEST_CASE("Decisions stand side by side, a measure a row") {
  const auto table = what_if_table({{{"Order today", {}}, outcome()}, {{"Wait 7 days", {}}, {}}});
  REQUIRE(table.columns().size() == 3);
  CHECK(table.columns()[2].title == "Wait 7 days");
  const auto cell = [&](std::string_view id, std::size_t column) {
    return table.at(*table.position_of(id)).cells[column].text;
  };
  CHECK(cell("lines", 1) == "12 (1 without a price)");
  CHECK(cell("pieces", 1) == "1,340");
  CHECK(cell("goods EUR", 1) == "1,234.50 EUR");
  CHECK(cell("goods USD", 1) == "80.00 USD");
  CHECK(cell("goods USD", 2) == "0.00 USD");
  CHECK(!table.position_of("freight EUR"));
  CHECK(cell("short_before", 1) == "under 0.1");
  CHECK(cell("short_after", 1) == "1.3");
  CHECK(cell("short_after", 2) == "0.0");
}

TEST_CASE("Items at risk are told with their day and what is alike") {
  const auto words = risk_sentences({{"Order today", {}}, outcome()});
  REQUIRE(words.size() == 1);
  CHECK(words[0] ==
        "LN-3: 18 % to run out; one in ten by 7 Dec 2026 if nothing more is ordered; alike in "
        "kind, material and size: LN-7 and LN-8.");
  CHECK(risk_sentences({{"Wait 7 days", {}}, {}}).empty());
}

}  // namespace what_if_page_test
