#include <algorithm>

#include <doctest/doctest.h>

#include "desk/reaction_form.hpp"
#include "desk/reaction_record.hpp"
#include "desk/sample_day.hpp"
#include "desk/suspect_words.hpp"
#include "store/open.hpp"

namespace reaction_log_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

const PatientRef ana{"P-1"};

Date ago(int day) {
  return test_today - days{day};
}

Unit worn(const std::string& item, int from, int to) {
  Unit unit = test_unit("P-1", Side::left, item, "", from);
  unit.lot = "";
  if (to > 0) {
    unit.ended_on = ago(to);
    unit.end_reason = EndReason::tear;
  }
  return unit;
}

/// Ana wore B-28 of mineral oil for a third of the time, and A-28 of silicone for the rest.
Assessment story() {
  Assessment day = test_assessment();
  day.clinic.units = {worn("B-28", 900, 600), worn("A-28", 600, 0)};
  day.clinic.items[1].constituents = {"mineral oil"};
  day.clinic.items[0].constituents = {"silicone elastomer"};
  day.lives.clear();
  return day;
}

void react(Clinic& clinic, int days_ago) {
  clinic.reactions.push_back(
      {ana, Side::left, ago(days_ago), ago(days_ago - 5), {"itching", "redness"}, ""});
}

}  // namespace

TEST_CASE("The log sets a reaction beside the parts that lay on the skin that day") {
  auto day = story();
  react(day.clinic, 700);
  react(day.clinic, 2000);
  day.clinic.units[1].end_reason = EndReason::reaction;
  day.clinic.units[1].ended_on = ago(100);
  const auto log = reaction_log(day.clinic, ana, test_today);
  REQUIRE(log.size() == 3);
  CHECK_FALSE(log[0].recorded);
  CHECK(entry_words(log[0]) ==
        "On 17 Aug 2026 a part was ended because of a reaction, left; none is recorded.");
  REQUIRE(log[0].worn.size() == 1);
  CHECK(
      worn_words(log[0].worn[0], log[0].day) ==
      "A-28, silicone locking liner, since 4 Apr 2025 (500 days), ended on 17 Aug 2026 because of "
      "a reaction");
  CHECK(entry_words(log[1]) == "Itching and redness, left, from 25 Dec 2024 until 30 Dec 2024.");
  CHECK(log[1].worn[0].item.text == "B-28");
  CHECK(log[2].worn.empty());
}

TEST_CASE("Counts, share of the time, chance, ratio and what is alike are said in words") {
  auto day = story();
  for (const int at : {880, 820, 760, 700, 650, 300}) react(day.clinic, at);
  const auto found = suspects_of_patient(day.clinic, ana, test_today);
  REQUIRE(found.size() == 1);
  const auto& first = found[0].substances.suspects[0];
  const auto words = suspect_words(first);
  CAPTURE(words);
  CHECK(words.starts_with("Mineral oil, "));
  CHECK(words.find("5 of 6 reactions began while this was worn (29 % of the time)") !=
        std::string::npos);
  CHECK(words.find("times as often as without it (95 % interval") != std::string::npos);
  CHECK(words.find("cannot be told apart from petrolatum type hydrocarbons") != std::string::npos);
  CHECK(telling(found[0], found[0].substances) == Telling::leads);
  CHECK(ranking_verdict(found[0], found[0].substances, "substance")
            .find("What stands out: mineral oil") != std::string::npos);
  const auto text = suspects_text(found[0]);
  CHECK(text.find("None of these, ") != std::string::npos);
}

TEST_CASE("One reaction is too little, one material leaves nothing to compare, and it is said") {
  auto day = story();
  react(day.clinic, 700);
  auto found = suspects_of_patient(day.clinic, ana, test_today)[0];
  CHECK(telling(found, found.substances) == Telling::too_little);
  CHECK(suspect_words(found.substances.suspects[0]).find("too little to say") != std::string::npos);
  day.clinic.units = {worn("B-28", 900, 0)};
  found = suspects_of_patient(day.clinic, ana, test_today)[0];
  CHECK(telling(found, found.substances) == Telling::no_contrast);
  CHECK(ranking_verdict(found, found.substances, "substance").find("nothing can be told") !=
        std::string::npos);
  day.clinic.reactions.clear();
  found = suspects_of_patient(day.clinic, ana, test_today)[0];
  CHECK(telling(found, found.substances) == Telling::no_reaction);
}

TEST_CASE("Unknown contents and days without parts are said, and who decides") {
  auto day = story();
  react(day.clinic, 2000);
  day.clinic.items[0].constituents = {};
  day.clinic.items[0].material = Material::other;
  const auto limits = suspect_limits(suspects_of_patient(day.clinic, ana, test_today)[0]);
  REQUIRE(limits.size() == 2);
  CHECK(limits[0].starts_with("1 reaction began on days for which no part is recorded"));
  CHECK(limits[1].starts_with("What A-28 holds is not known"));
  day.clinic.sensitivities = {{ana, "mineral oil", "rash", "patch test", std::nullopt}};
  CHECK(suspect_limits(suspects_of_patient(day.clinic, ana, test_today)[0]).back() ==
        "Recorded as sensitive to mineral oil (patch test); the chances do not reckon with that.");
  const auto cautions = suspect_cautions();
  CHECK(cautions[0].find("patch test") != std::string::npos);
  CHECK(cautions.back().find("does not replace") != std::string::npos);
}

TEST_CASE("Bars of what was worn and marks of reactions lie where their days are") {
  auto day = story();
  react(day.clinic, 700);
  react(day.clinic, 650);
  const auto chart = worn_chart(day.clinic, ana, test_today);
  REQUIRE(chart.strips.size() == 3);  // a heading and two items, the first worn first
  CHECK(chart.strips[1].label == "B-28 silicone locking liner");
  const StripMeasures measures{1000, 200, 24, 30, 70};
  const auto drawing = draw_worn(chart, measures);
  REQUIRE(drawing.marks.size() == 2);
  CHECK(drawing.marks[0].number == "2");  // the latest stands first
  CHECK(drawing.marks[1].x < drawing.marks[0].x);
  const auto& bar = drawing.rows[1].worn.at(0);
  CHECK(bar.from > measures.label_width);
  CHECK(drawing.marks[1].x > bar.from);
  CHECK(drawing.marks[0].x < bar.to);
  CHECK(drawing.rows[2].worn.at(0).to == doctest::Approx(drawing.today));
  CHECK(drawing.mark_at(drawing.marks[0].x + 2, 4) == std::optional<std::size_t>{0});
  CHECK_FALSE(drawing.mark_at(drawing.today, 4));
  CHECK(drawing.strip_at(drawing.rows[2].top + 1, 24) == std::optional<std::size_t>{2});
  CHECK(numbered_log(chart).starts_with("2. Itching and redness"));
}

TEST_CASE("The window records what is filled in, and refuses in one sentence") {
  const auto store =
      store::open_in_memory([] { return std::chrono::system_clock::time_point{test_today}; });
  const Day day{story()};
  const auto form = reaction_form(day, ana);
  CHECK(form.fields[0].value == "left");  // the only side on which parts are worn
  const auto work = store->begin_write({"tester", form.why});
  work->put(Patient{ana, "", "", {}, {}});
  const auto record = [&](const std::string& began, const std::string& signs) {
    return form.book(*work, {"left", began, "", signs, ""});
  };
  CHECK(record("soon", "rash").error().sentence.starts_with("Began on:"));
  CHECK(record("2026-11-20", "").error().sentence.starts_with("Say what was seen"));
  const auto made = record("2026-11-20", "rash; dry skin");
  REQUIRE(made);
  CHECK(made->notes.at(0) == "Recorded for P-1: rash and dry skin, left, from 20 Nov 2026 on.");
  CHECK(work->all<Reaction>().at(0).record.signs == std::vector<std::string>{"rash", "dry skin"});
  const auto view = reactions_view(day, ana);
  // Two items, and two substances with their groups, each under a heading.
  CHECK(view.chart.strips.size() == 1 + 2 + 1 + 2);
  CHECK(view.chart.strips[4].label == "mineral oil and 1 more");
  CHECK(view.text.find("patch test") < view.text.find("Reactions, by their number"));
}

TEST_CASE("The window records that a reaction healed, and says where none lasts") {
  const auto store =
      store::open_in_memory([] { return std::chrono::system_clock::time_point{test_today}; });
  auto assessment = test_assessment();
  CHECK_FALSE(healed_form(Day{test_assessment()}, ana));
  assessment.clinic.reactions = {{ana, Side::left, ago(9), std::nullopt, {"rash"}, ""}};
  const auto work = store->begin_write({"tester", "a reaction"});
  work->put(Patient{ana, "", "", {}, {}});
  work->put(assessment.clinic.reactions[0]);
  const Day day{std::move(assessment)};
  const auto form = healed_form(day, ana);
  REQUIRE(form);
  CHECK_FALSE(form->book(*work, {form->fields[0].value, "soon"}));
  REQUIRE(form->book(*work, {form->fields[0].value, iso_text(ago(1))}));
  CHECK(work->all<Reaction>().at(0).record.ended_on == ago(1));
}

}  // namespace reaction_log_test
