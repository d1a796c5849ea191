#include <algorithm>

#include <doctest/doctest.h>

#include "desk/limb_drawing/chain_picture.hpp"
#include "desk/sample_day.hpp"

namespace limb_drawing_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

const PatientRef patient{"P-1"};

picture::Room room(double width) {
  picture::Room made;
  made.width = width;
  made.height = 400;
  made.line_height = 16;
  made.text_width = [](std::string_view text) { return 6.0 * static_cast<double>(text.size()); };
  return made;
}

/// A pin suspension on the left, of which only the liners are recorded, one of them in the drawer.
Assessment bilateral() {
  auto assessment = test_assessment();
  auto& clinic = assessment.clinic;
  clinic.prostheses = {{patient, Side::left, Level::transtibial, Suspension::pin, Stage::definitive,
                        test_today - days{300}, std::nullopt}};
  clinic.units[2].ended_on.reset();
  clinic.units[2].end_reason.reset();
  clinic.units[2].share = 0;
  clinic.units[1].share = 1;
  return assessment;
}

struct Drawn {
  std::vector<PatientFinding> findings;
  std::vector<SideChain> chains;
};

Drawn drawn(Assessment assessment) {
  const Day day{std::move(assessment)};
  Drawn made{findings_of(day.clinic(), patient, day.today()), {}};
  made.chains = limb_chains(day, patient, made.findings);
  return made;
}

std::string verdicts(const ChainRow& row) {
  std::string text;
  for (const auto& each : row.verdicts) text += each.words + ";";
  return text;
}

}  // namespace

TEST_CASE("Left stands before right, and a side without a prosthesis and parts is left out") {
  const auto both = drawn(bilateral());
  REQUIRE(both.chains.size() == 2);
  CHECK(both.chains[0].side == Side::left);
  CHECK(both.chains[0].held_by == "transtibial, pin suspension, definitive");
  CHECK(both.chains[1].held_by == "no prosthesis is recorded as in use");
  auto assessment = bilateral();
  assessment.clinic.units.erase(assessment.clinic.units.begin());
  assessment.lives.clear();
  CHECK(drawn(std::move(assessment)).chains.size() == 1);
}

TEST_CASE("What pin suspension needs and nothing worn does is a row of its own, in its place") {
  // Needs a locking liner, a pin and a lock: resources/suspension/ways.csv.
  const auto rows = drawn(bilateral()).chains.at(0).rows;
  REQUIRE(rows.size() == 4);
  CHECK(rows[0].unit == 1);
  CHECK_FALSE(rows[0].further);
  CHECK(rows[1].unit == 2);
  CHECK(rows[1].further);
  CHECK(rows[1].dates.find("in the drawer") != std::string::npos);
  CHECK(rows[2].title == "missing: pin");
  CHECK(rows[2].missing());
  CHECK(rows[3].title == "missing: lock");
  CHECK(rows[3].id == "missing left lock");
}

TEST_CASE("A part is never said to be safe where something is not known of it") {
  const auto none = drawn(bilateral()).chains.at(0).rows.at(0);
  CHECK(verdicts(none).find("sensitivities not recorded;") != std::string::npos);
  for (const auto& each : none.verdicts) CHECK(each.standing != Standing::good);

  auto assessment = bilateral();
  for (auto& item : assessment.clinic.items) {
    item.size_min_cm = 27;
    item.size_max_cm = 29;
    item.size_at_cm = 4;
    item.constituents = {"moss oil"};
  }
  assessment.clinic.sensitivities = {{patient, "moss oil", "", "patch test", test_today}};
  const auto not_measured = drawn(assessment).chains.at(0).rows.at(0);
  CHECK(not_measured.verdicts.at(0).words == "conflict: moss oil");
  CHECK(not_measured.verdicts.at(0).standing == Standing::stops);
  CHECK(verdicts(not_measured).find("size not known to fit;") != std::string::npos);
  assessment.clinic.measurements = {{patient, Side::left, test_today, 4, 28}};
  CHECK(verdicts(drawn(assessment).chains.at(0).rows.at(0)).find("size fits;") !=
        std::string::npos);
  assessment.clinic.measurements = {{patient, Side::left, test_today, 4, 33}};
  CHECK(verdicts(drawn(assessment).chains.at(0).rows.at(0)).find("does not fit: too small;") !=
        std::string::npos);
}

TEST_CASE("A part that the catalogue does not know is drawn, and said not to be checked") {
  auto assessment = bilateral();
  assessment.clinic.units[0].item = {"Z-99"};
  assessment.lives.clear();
  const auto row = drawn(std::move(assessment)).chains.at(1).rows.at(0);
  CHECK(row.title == "Z-99");
  CHECK(verdicts(row).starts_with("not in the catalogue"));
}

TEST_CASE("Every row is a stop with full sentences, in narrow and wide rooms, within the picture") {
  const auto chains = drawn(bilateral()).chains;
  for (const double width : {300.0, 800.0, 1500.0}) {
    CAPTURE(width);
    const auto picture = chain_picture(chains, "P-1", test_today)(room(width));
    REQUIRE(picture.stops.size() == 5);
    CHECK(picture.stops[0].id == "1");
    CHECK(picture.stops[0].words.find("Even chance of being worn out by") != std::string::npos);
    CHECK(picture.stops[2].words.find("needs a pin") != std::string::npos);
    for (const auto& stop : picture.stops) {
      CHECK(stop.area.left >= 0);
      CHECK(stop.area.right <= width);
      CHECK(stop.area.bottom <= picture.height);
    }
    // Words do not begin outside the picture.
    for (const auto& mark : picture.marks) {
      if (const auto* words = std::get_if<picture::Words>(&mark)) {
        CHECK(words->at.x >= 0);
        CHECK(words->at.x <= width);
      }
    }
  }
}

TEST_CASE("The picture of the limbs says the same in words and as a table, with the caution") {
  const auto picture = chain_picture(drawn(bilateral()).chains, "P-1", test_today)(room(900));
  CHECK(picture.words.starts_with("Left: transtibial, pin suspension"));
  CHECK(picture.words.find("missing: lock") == std::string::npos);  // said in a sentence
  CHECK(picture.words.find("needs a lock") != std::string::npos);
  CHECK(picture.words.find("does not replace the judgement") != std::string::npos);
  CHECK(picture.table.rows.size() == 5);
  CHECK(picture.table.rows.back().front() == "Right");
  const auto empty = chain_picture({}, "P-1", test_today)(room(900));
  CHECK(empty.stops.empty());
  CHECK(empty.words.find("No prosthesis and no part in use is recorded.") != std::string::npos);
}

}  // namespace limb_drawing_test
