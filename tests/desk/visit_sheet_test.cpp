// What is prepared for a day's visits.
#include "desk/visit_sheet.hpp"

#include <filesystem>

#include "desk/sample_day.hpp"
#include "desk/visit_papers.hpp"
#include "exchange/documents/read_pdf.hpp"

namespace visit_sheet_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

const Date visit = test_today + days{20};  // the next visit of P-1

const std::string path =
    (std::filesystem::temp_directory_path() / "sparewell-visits-test.pdf").string();

/// P-1 wears A-28 right and B-28 left; both are near their end.
Assessment near_their_end() {
  auto made = test_assessment();
  for (auto& life : made.lives) {
    const double age = days_between(made.clinic.units[life.unit].issued_on, test_today);
    life.life = {test_today, age, 3.0, age, {{test_today, 1.0}}};
  }
  return made;
}

VisitSheet only(const VisitDay& visits) {
  REQUIRE(visits.sheets.size() == 1);
  return visits.sheets.front();
}

bool any(const VisitSheet& sheet, const std::string& key, const std::string& words) {
  return std::ranges::any_of(sheet.findings, [&](const VisitFinding& each) {
    return each.key == key && has(each.words, words);
  });
}

}  // namespace

TEST_CASE("Patients come because of their next visit or of what is booked for the day") {
  auto assessment = test_assessment();
  assessment.clinic.reservations = {{{"P-2"}, {"C-28"}, "main store", 1, visit},
                                    {{"P-1"}, {"C-28"}, "main store", 0, visit + days{1}}};
  const Day day{std::move(assessment)};
  const auto visits = visit_day(day, visit);
  REQUIRE(visits.sheets.size() == 2);
  CHECK(visits.sheets[0].patient.text == "P-1");
  CHECK(visits.sheets[0].reason == "next visit");
  CHECK(visits.sheets[1].reason == "parts are booked for this day");
  CHECK(visit_day(day, visit + days{1}).sheets.empty());
}

TEST_CASE("What is near its end comes with its span, and its replacement with where it lies") {
  auto assessment = near_their_end();
  assessment.clinic.shelf = {{{{"A-28"}, "N1", test_today + days{600}}, "main store", 3}};
  const Day day{std::move(assessment)};
  const auto sheet = only(visit_day(day, visit));
  REQUIRE(sheet.near_end.size() == 2);
  CHECK(has(sheet.near_end[0].words, "Even chance of being worn out by"));
  CHECK(has(sheet.near_end[0].words, "for eight in ten"));
  REQUIRE(sheet.bench.size() == 2);
  CHECK(has(sheet.bench[0].words, "B-28, Locking liner, size 28, left: not on the shelf."));
  CHECK(has(sheet.bench[1].words, "A-28, Locking liner, size 28, right: lot N1 (use by"));
  CHECK(sheet.missing() == 1);
}

TEST_CASE("A part that lasts is not near its end, unless its use-by date is") {
  auto assessment = test_assessment();
  for (auto& life : assessment.lives) life.life = {test_today, 1, 3.0, 9000.0, {{test_today, 1.0}}};
  CHECK(only(visit_day(Day{assessment}, visit)).near_end.empty());
  assessment.clinic.shelf = {{{{"A-28"}, "LOT-S1", visit - days{1}}, "main store", 1}};
  const Day day{assessment};
  const auto sheet = only(visit_day(day, visit));
  REQUIRE(sheet.near_end.size() == 1);
  CHECK(any(sheet, "expired", "Right, A-28: its use-by date, 14 Dec 2026, has passed"));
}

TEST_CASE("What is booked covers the replacement, and one piece is not promised twice") {
  auto assessment = near_their_end();
  auto& clinic = assessment.clinic;
  clinic.patients[1].next_visit = visit;
  clinic.units[3].item = {"A-28"};  // P-2 wears what P-1 does
  clinic.shelf = {{{{"A-28"}, "N1", std::nullopt}, "main store", 1}};
  clinic.reservations = {{{"P-1"}, {"A-28"}, "main store", 1, visit}};
  const Day day{std::move(assessment)};
  const auto visits = visit_day(day, visit);
  REQUIRE(visits.sheets.size() == 2);
  const auto& first = visits.sheets[0];
  REQUIRE(first.bench.size() == 2);
  CHECK(first.bench[0].booked);
  CHECK(
      has(first.bench[0].words, "Booked: 1 of A-28, Locking liner, size 28: lot N1 at main store"));
  CHECK(first.bench[1].item.text == "B-28");
  REQUIRE(visits.sheets[1].bench.size() == 1);
  CHECK(visits.sheets[1].bench[0].missing() == 1);
}

TEST_CASE("What is set aside for one patient's booking does not keep the rest from the next") {
  auto assessment = near_their_end();
  auto& clinic = assessment.clinic;
  clinic.patients[1].next_visit = visit;
  clinic.units[3].item = {"A-28"};
  clinic.shelf = {{{{"A-28"}, "N1", std::nullopt}, "main store", 2}};
  clinic.reservations = {{{"P-1"}, {"A-28"}, "main store", 1, visit}};
  const Day day{std::move(assessment)};
  const auto visits = visit_day(day, visit);
  REQUIRE(visits.sheets.size() == 2);
  CHECK(visits.sheets[0].bench[0].missing() == 0);
  REQUIRE(visits.sheets[1].bench.size() == 1);
  CHECK(visits.sheets[1].bench[0].missing() == 0);
}

TEST_CASE("A part that a check speaks against is not made ready") {
  auto assessment = near_their_end();
  assessment.clinic.items[1].constituents = {"mineral oil"};
  assessment.clinic.sensitivities = {{{"P-1"}, "mineral oil", "rash", "patch test", std::nullopt}};
  assessment.clinic.shelf = {{{{"B-28"}, "N1", std::nullopt}, "main store", 1}};
  const Day day{std::move(assessment)};
  const auto sheet = only(visit_day(day, visit));
  CHECK(sheet.sensitive);
  CHECK(sheet.findings.front().gravity == care::Gravity::stops);
  CHECK(any(sheet, "conflict", "Left, B-28: Conflict with the recorded sensitivity"));
  REQUIRE_FALSE(sheet.bench.empty());
  CHECK(has(sheet.bench[0].words, "unless a clinician decides so"));
  CHECK(sheet.bench[0].take.empty());
  CHECK(sheet.bench[0].missing() == 0);
}

TEST_CASE("The suspension, the size and the age of measurements are looked at, the gravest first") {
  auto assessment = test_assessment();
  auto& clinic = assessment.clinic;
  Prosthesis prosthesis;
  prosthesis.patient = {"P-1"};
  prosthesis.delivered_on = test_today - days{500};
  clinic.prostheses = {prosthesis};
  Item pin;
  pin.code = {"PIN"};
  pin.kind = Kind::pin;
  pin.thread = "M6";
  clinic.items[1].thread = "M10";
  clinic.items[1].size_min_cm = 28;
  clinic.items[1].size_max_cm = 30;
  clinic.items[1].size_at_cm = 4;
  clinic.items.push_back(pin);
  clinic.units.push_back(test_unit("P-1", Side::left, "PIN", "S7", 100));
  clinic.units.push_back(test_unit("P-1", Side::right, "UNKNOWN", "S8", 100));
  clinic.measurements = {{{"P-1"}, Side::left, test_today - days{300}, 4, 29}};
  const Day day{std::move(assessment)};
  const auto sheet = only(visit_day(day, visit));
  CHECK(
      any(sheet, "function_missing", "Left: Pin suspension needs a lock, and no such part is recorded"));
  CHECK(any(sheet, "thread_differs", "The threads differ"));
  CHECK(std::ranges::count(sheet.findings, "thread_differs", &VisitFinding::key) == 1);
  CHECK(any(sheet, "measurement_old", "measure at this visit"));
  CHECK(any(sheet, "no_prosthesis", "Right: parts are in use"));
  CHECK(any(sheet, "not_in_catalogue", "Right: 1 part is in use that the catalogue"));
  CHECK(std::ranges::is_sorted(sheet.findings, {}, &VisitFinding::gravity));
}

TEST_CASE("Early endings and flagged lots are told to those whom they concern") {
  wear::Surprises surprises;
  surprises.units = {{2, 100, 400, 0.002}};
  wear::EarlyEndings lot;
  lot.item = {"A-28"};
  lot.lot = "LOT-S1";
  lot.units = 9;
  lot.early = 6;
  lot.flagged = true;
  surprises.lots = {lot};
  const Day day{test_assessment(), std::move(surprises)};
  const auto sheet = only(visit_day(day, visit));
  CHECK(any(sheet, "early_ending", "Left, B-28: wore out on 6 Oct 2026"));
  CHECK(any(sheet, "flagged", "Lot LOT-S1 of A-28"));
}

TEST_CASE("The papers are a list and one page a patient, whatever there is to say") {
  auto assessment = near_their_end();
  auto& clinic = assessment.clinic;
  clinic.patients[1].next_visit = visit;
  for (int i = 0; i < 60; ++i) {
    clinic.units.push_back(
        test_unit("P-2", Side::right, fmt::format("UNKNOWN{}", i), fmt::format("Q{}", i), i));
    clinic.reservations.push_back(
        {{"P-2"}, {fmt::format("ITEM-{}", i)}, "a place with a long name", 2, visit});
    clinic.sensitivities.push_back(
        {{"P-2"}, fmt::format("substance {}", i), "rash", "observed", std::nullopt});
  }
  const Day day{std::move(assessment)};
  const auto visits = visit_day(day, visit);
  for (const auto paper : {exchange::PaperSize::a4, exchange::PaperSize::letter}) {
    const auto pages = print_visits(day, visits, {paper, true}, path);
    REQUIRE(pages);
    CHECK(*pages == 3);
    CHECK(pages_of(path) == 3);
    CHECK(has(words_in(path, 1, 1), "Ana Fieldmouse"));
    const auto full = words_in(path, 3, 3);
    CHECK(has(full, "more, see the program."));
    CHECK(has(full, "Notes"));
    CHECK(has(full, "does not replace the judgement"));
  }
  const auto pages = print_visits(day, visits, {exchange::PaperSize::a4, false}, path);
  REQUIRE(pages);
  CHECK_FALSE(has(words_in(path), "Fieldmouse"));
  std::filesystem::remove(path);
}

TEST_CASE("Without a visit there is a sentence and no file") {
  const Day day{test_assessment()};
  const auto visits = visit_day(day, test_today);
  const auto pages = print_visits(day, visits, {}, path);
  REQUIRE(pages);
  CHECK(*pages == 0);
  CHECK_FALSE(std::filesystem::exists(path));
  CHECK(no_visit_words(day, test_today) ==
        "No visit is known for Wed 25 Nov 2026; the next is on Tue 15 Dec 2026.");
  CHECK(no_visit_words(day, visit) == "No visit is known for Tue 15 Dec 2026.");
}

}  // namespace visit_sheet_test
