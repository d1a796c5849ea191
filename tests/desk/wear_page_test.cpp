#include "desk/wear_page.hpp"

#include <doctest/doctest.h>

#include "desk/clinic_jobs.hpp"
#include "desk/sample_day.hpp"
#include "desk/tested_forecasts.hpp"

namespace wear_page_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

/// Liners one after another for some patients, each worn out after half a year, ended long ago.
Clinic clinic_with_history(int patients, int units_each) {
  auto clinic = test_assessment().clinic;
  clinic.units.clear();
  for (int patient = 0; patient < patients; ++patient) {
    for (int i = 0; i < units_each; ++i) {
      auto unit = test_unit("P-" + std::to_string(patient + 1), Side::left, "A-28",
                            std::to_string(100 * patient + i), 180 * (i + 1));
      if (i > 0) {
        unit.ended_on = unit.issued_on + days{180};
        unit.end_reason = EndReason::hole;
      }
      clinic.units.push_back(unit);
    }
  }
  return clinic;
}

Assessment assessed(Clinic clinic) {
  return assess(std::move(clinic), built_in_priors(), test_today);
}

/// Units 1 and 2 (both P-1) wore out far too early; the lot of the second, LOT-S3, is flagged.
DayPtr day_with_surprises() {
  wear::Surprises found;
  found.units = {{1, 4, 300, 0.0001}, {2, 12, 300, 0.0007}};
  found.units_by_chance = 0.4;
  found.lots.resize(2);
  found.lots[1].item = {"B-28"};
  found.lots[1].lot = "LOT-S3";
  found.lots[1].units = 9;
  found.lots[1].early = 6;
  found.lots[1].patients = 7;
  found.lots[1].early_patients = 4;
  found.lots[1].expected = 0.84;
  found.lots[1].p_value = 0.0004;
  found.lots[1].flagged = true;
  auto day = assessed(test_assessment().clinic);
  return std::make_shared<const Day>(std::move(day), std::move(found));
}

}  // namespace

TEST_CASE("Before a test the page says that nothing is known, and how to test") {
  WearPage page;
  page.show(day_with_surprises());
  CHECK_FALSE(page.tested());
  CHECK(page.headline() == "The forecasts have not been tested on this clinic's history yet.");
  CHECK(page.grounds().find("Ctrl+T") != std::string::npos);
  CHECK(page.errors().empty());
  CHECK(page.scores().total() == 0);
}

TEST_CASE("A test is one row for all and one a kind, drawn and in figures alike") {
  WearPage page;
  page.show_test(tested_forecasts());
  REQUIRE(page.scores().total() == 5);
  REQUIRE(page.drawn().size() == 5);
  for (std::size_t i = 0; i < 5; ++i) CHECK(page.scores().at(i).id == page.drawn()[i].id);
  CHECK(page.scores().at(0).id == "all");
  const auto& liners = page.scores().at(1);
  const std::vector<std::string> expected{"Liners",
                                          "412",
                                          "300",
                                          "50 % (45 to 55)",
                                          "79 % (75 to 83)",
                                          "95 % (92 to 97)",
                                          "about right",
                                          "20.0",
                                          "50.0",
                                          "25.0",
                                          "60 % less"};
  REQUIRE(liners.cells.size() == expected.size());
  for (std::size_t i = 0; i < expected.size(); ++i) CHECK(liners.cells[i].text == expected[i]);
  CHECK(page.drawn()[1].words ==
        "Liners: 412 forecasts, 300 parts have worn out since. The 50 % span held 50 % (45 to 55). "
        "The 80 % span held 79 % (75 to 83). The 95 % span held 95 % (92 to 97). Spans: about "
        "right. Mean error 20.0 days; 50.0 with a calendar interval, 25.0 with one law.");
}

TEST_CASE("A refused test shows its reason and no figures; without a test they go away") {
  WearPage page;
  page.show_test(tested_forecasts());
  page.show_test(std::make_shared<const ForecastTest>(refuse("There is too little history.")));
  CHECK(page.headline() == "There is too little history.");
  CHECK(page.scores().total() == 0);
  CHECK(page.drawn().empty());
  page.show_test(nullptr);
  CHECK_FALSE(page.tested());
}

TEST_CASE("The chosen kind is the one that is told of, and the only one in the lists") {
  WearPage page;
  page.show(day_with_surprises());
  page.show_test(tested_forecasts());
  const auto all = page.effects().size();
  CHECK(all == words<Kind>().size() * (1 + wear::factor_count));
  page.choose(Kind::liner);
  CHECK(page.headline().starts_with("Of 412 liner forecasts"));
  REQUIRE(page.effects().size() == 1 + wear::factor_count);
  CHECK(page.effects().at(0).cells[1].text.starts_with("From 4 liners with 1 wear ending"));
  CHECK(page.effects().at(2).cells[1].text.starts_with("Kneeling two hours a day: "));
  CHECK(page.early().size() == 2);
  page.choose(Kind::pump);
  CHECK(page.early().size() == 0);
  CHECK(page.effects().at(0).cells[1].text.find("not experience of this clinic") !=
        std::string::npos);
  page.choose(std::nullopt);
  CHECK(page.effects().size() == all);
}

TEST_CASE("Every kind and all of them have an id and a choice of their own") {
  const auto choices = kind_choices();
  CHECK(choices.size() == words<Kind>().size() + 1);
  for (const auto& kind : choices) CHECK(kind_of_id(kind_id(kind)) == kind);
  CHECK(kind_title(std::nullopt) == "All kinds");
  CHECK(kind_title(Kind::sleeve) == "Sleeves");
}

TEST_CASE("Flagged lots come with their sentence, and mark the parts that are of them") {
  WearPage page;
  page.show(day_with_surprises());
  REQUIRE(page.flagged().size() == 1);
  CHECK(page.flag_words(page.flagged().at(0).id).starts_with("Lot LOT-S3 of B-28: 6 of 9 units"));
  CHECK(page.flag_words("lot 7").empty());
  CHECK(page.early_summary().starts_with("1 of 2 lots tested flagged"));
  REQUIRE(page.early().size() == 2);
  const auto& part = page.early().at(0);
  CHECK(part.cells[0].text == "P-1  Ana Fieldmouse");
  CHECK(part.cells[11].text == "0.07 %");
  CHECK(part.cells[12].text == "lot");
  CHECK(part.strong);
  CHECK(page.unit_of(part.id) == 2);
  CHECK_FALSE(page.unit_of("3"));
}

TEST_CASE("Early endings are found by lot and flag, and counted beside chance") {
  WearPage page;
  page.show(day_with_surprises());
  CHECK(page.early_count() ==
        "2 parts wore out so early that fewer than 1 in 100 do; by chance alone it would be less "
        "than one.");
  for (const auto* typed : {"lot-s3", "flagged"}) {
    page.early().find(typed);
    CHECK(page.early().size() == 1);
  }
  page.early().find("fieldmouse");
  CHECK(page.early().size() == 2);
  page.early().find("nobody");
  CHECK(page.early_empty_words() == "No such part answers to what you asked for.");
}

TEST_CASE("Where nothing is flagged the page says so, and never that all is well") {
  WearPage page;
  page.show(std::make_shared<const Day>(assessed(test_assessment().clinic), wear::Surprises{}));
  CHECK(page.flagged().size() == 0);
  CHECK(page.early_summary().starts_with("0 of 0 lots tested flagged"));
  CHECK(page.early_empty_words() == "No part wore out that early.");
}

TEST_CASE("The job tests the open clinic, tells how far it is, and can be stopped") {
  const Day day{assessed(clinic_with_history(6, 8))};
  std::vector<double> done;
  std::stop_source stop;
  const JobControl control{[&](const JobProgress& progress) { done.push_back(*progress.done); },
                           stop.get_token()};
  const auto test = test_forecasts(day, control);
  REQUIRE(test);
  REQUIRE(*test);
  CHECK((*test)->kinds.size() == 1);
  CHECK((*test)->all.units > 0);
  REQUIRE(done.size() == 6);
  CHECK(done.front() == 0);
  CHECK(done.back() == doctest::Approx(5.0 / 6));
  stop.request_stop();
  CHECK_FALSE(test_forecasts(day, control));
}

TEST_CASE("A history that is too short is refused with words, not called stopped") {
  const Day day{assessed(clinic_with_history(2, 1))};
  const auto test = test_forecasts(day, {[](const JobProgress&) {}, {}});
  REQUIRE(test);
  CHECK_FALSE(*test);
}

TEST_CASE("A test holds as long as the records are the same that forecasts rest on") {
  const auto before = clinic_with_history(3, 3);
  auto after = before;
  after.settings.name = "Another name";
  after.order_lines.emplace_back();
  CHECK(same_history(before, after));
  after.units[0].ended_on = test_today;
  CHECK_FALSE(same_history(before, after));
  after = before;
  after.settings.records_begin = test_today;
  CHECK_FALSE(same_history(before, after));
  after = before;
  after.usage.emplace_back();
  CHECK_FALSE(same_history(before, after));
  after = before;
  after.items[0].material = Material::urethane;
  CHECK_FALSE(same_history(before, after));
}

}  // namespace wear_page_test
