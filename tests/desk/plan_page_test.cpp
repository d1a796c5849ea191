#include "desk/plan_page.hpp"

#include <doctest/doctest.h>

#include "desk/play_words.hpp"
#include "desk/played_policy.hpp"

namespace plan_page_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("Before a play the page says what it is for, and a refusal is said as it is") {
  PlanPage page;
  CHECK_FALSE(page.played());
  CHECK(says(page.headline(), "has not been played"));
  CHECK(says(page.grounds(), "Ctrl+Y"));
  CHECK(page.choices().empty());
  CHECK(page.runs().size() == 0);
  CHECK(page.by_cost().empty());
  page.show_play(std::make_shared<const PolicyPlay>(refuse("There is nothing to play.")));
  CHECK(page.headline() == "There is nothing to play.");
  CHECK(page.grounds().empty());
}

TEST_CASE("The saving is told with its interval, and what the play leaves out") {
  PlanPage page;
  page.show_play(played_policy());
  CHECK(page.choices() ==
        std::vector<std::string>{"The last 12 months, EUR", "4 futures of 12 months, EUR"});
  const auto words = page.headline();
  CAPTURE(words);
  CHECK(says(words, "service target of 95 %"));
  CHECK(says(words, "96.0 % of the pieces"));
  CHECK(says(words, "12,000 EUR"));
  CHECK(says(words, "20,000 EUR"));
  CHECK(says(words, "40 % less (31 % less to 48 % less with 90 % confidence, the items"));
  CHECK(says(page.by_cost(), "9,000 EUR"));
  CHECK(says(page.grounds(), "3 items ordered for one patient are left out"));
  CHECK(says(page.grounds(), "1 stocked item without a cost is left out"));
  CHECK(says(page.grounds(), "new patients"));
  page.choose(1);
  CHECK(says(page.headline(), "the futures drawn anew"));
}

TEST_CASE("A play that says that min-max needs less is told as it is") {
  auto played = played_world(1);
  played.saving->share = -0.12;
  played.saving->low = -0.3;
  played.saving->high = 0.05;
  CHECK(says(saving_words(played, 0.95), "Sparewell needs 12 % more (30 % more to 5 % less"));
  played.saving.reset();
  CHECK(says(saving_words(played, 0.95), "at none of the levels"));
}

TEST_CASE("The table leaves out steps that nobody wants, and of min-max those that are beaten") {
  PlanPage page;
  page.show_play(played_policy());
  auto& runs = page.runs();
  std::vector<std::string> names;
  for (std::size_t i = 0; i < runs.size(); ++i) names.push_back(runs.at(i).cells[0].text);
  CHECK(names == std::vector<std::string>{"Sparewell, 90 %", "Sparewell, 95 % (present)",
                                          "By cost, 95 %", "Min-max, 1 x", "Min-max, 2 x",
                                          "Order when empty"});
  const auto present = runs.position_of(page.present_id());
  REQUIRE(present);
  CHECK(runs.at(*present).strong);
  for (const auto& row : {runs.at(*present)}) CHECK(row.cells.size() == runs.columns().size());
  CHECK(runs.at(*present).cells[3].text == "20");
  CHECK(runs.at(*present).cells[4].text == "4.5");
  CHECK(runs.at(*present).cells[9].text == "2,400 EUR");
  page.choose(1);  // means over four futures
  CHECK(runs.at(*present).cells[3].text == "20.0");
  CHECK(runs.at(*present).cells[9].text == "2,400 EUR");
}

TEST_CASE("Each way of ordering is a curve, the present target is set apart") {
  PlanPage page;
  page.show_play(played_policy());
  REQUIRE(page.curves().size() == 4);
  CHECK(page.curves()[0].points.size() == 2);
  CHECK(page.curves()[0].points[1].label == "present target");
  CHECK(page.curves()[0].points[0].label.empty());
  CHECK(page.curves()[2].points.size() == 2);
  CHECK(page.curves()[3].points.size() == 1);
  CHECK(says(page.curves()[2].points[1].words, "Min-max, 2 x: 96.0 % on hand"));
  CHECK(page.money_title() == "Mean money in stock, EUR");
}

TEST_CASE("A play holds until what it rests on changes") {
  Clinic one;
  Clinic other;
  CHECK(same_play(one, other));
  other.settings.name = "Another name";
  CHECK(same_play(one, other));
  other.settings.service_target = 0.9;
  CHECK_FALSE(same_play(one, other));
  other = one;
  other.suppliers.emplace_back();
  CHECK_FALSE(same_play(one, other));
}

}  // namespace plan_page_test
