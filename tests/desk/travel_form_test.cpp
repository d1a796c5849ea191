#include "desk/travel_form.hpp"

#include <doctest/doctest.h>

#include "desk/papers/paper_form.hpp"
#include "desk/sample_day.hpp"
#include "desk/travel_words.hpp"

namespace travel_form_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

TravelAnswers usual() {
  return {"2026-12-10", "2027-01-20", "", "95 %", as_usual, "", "", as_usual, as_usual};
}

std::string refusal(const TravelAnswers& answers) {
  const auto read = read_travel("P-0002", answers);
  return read ? "" : read.error().sentence;
}

}  // namespace

TEST_CASE("What is typed before a trip is read, field by field") {
  auto answers = usual();
  answers.delay = "3";
  answers.wanted = "99.9 %";
  answers.activity = "K4";
  answers.kneeling = "2.5";
  answers.sweating = "high";
  answers.impact_sport = "no";
  const auto read = read_travel("P-0002", answers);
  REQUIRE(read);
  CHECK(read->departure == make_date(2026, 12, 10));
  CHECK(read->back == make_date(2027, 1, 20));
  CHECK(read->delay_days == 3);
  CHECK(read->wanted == doctest::Approx(0.999));
  CHECK(read->use.activity == Activity::k4);
  CHECK(read->use.kneeling_hours == 2.5);
  CHECK_FALSE(read->use.wear_hours);
  CHECK(read->use.sweating == Sweating::high);
  CHECK(read->use.impact_sport == false);
  CHECK_FALSE(read_travel("P-0002", usual())->use.activity);
  CHECK_FALSE(read->resupply_days);
  answers.sweating = in_water;
  answers.resupply = "5";
  CHECK(read_travel("P-0002", answers)->use.water);
  CHECK(read_travel("P-0002", answers)->resupply_days == 5);
}

TEST_CASE("Others who travel along are checked together, and nobody twice") {
  Assessment none;
  none.today = make_date(2026, 11, 25);
  none.clinic.patients = {{{"P-0002"}, "", "", std::nullopt, std::nullopt}};
  const Day day{std::move(none)};
  auto answers = usual();
  answers.with = " P-0002 ,";
  CHECK(travel_text(day, "P-0002", answers).find("twice") != std::string::npos);
}

TEST_CASE("What cannot be read is refused with the name of its field") {
  auto answers = usual();
  answers.departure = "10 Dec";
  CHECK(refusal(answers).starts_with("Departure:"));
  answers = usual();
  answers.back = "soon";
  CHECK(refusal(answers).starts_with("Return:"));
  answers = usual();
  answers.delay = "-1";
  CHECK(refusal(answers).starts_with("Delay:"));
  answers = usual();
  answers.resupply = "0";
  CHECK(refusal(answers).starts_with("Parts there:"));
  answers = usual();
  answers.kneeling = "30";
  CHECK(refusal(answers).starts_with("Kneeling:"));
  answers = usual();
  answers.wear_hours = "many";
  CHECK(refusal(answers).starts_with("Worn:"));
}

TEST_CASE("Assurance is never rounded up to certainty") {
  CHECK(assurance_words(0.9524) == "95.2 %");
  CHECK(assurance_words(0.99996) == "over 99.9 %");
  CHECK(assurance_words(0.0000001) == "under 0.1 %");
}

TEST_CASE("A function without a part in use is told, and nothing is promised") {
  TravelCheck check;
  check.request.departure = make_date(2026, 12, 10);
  check.request.back = check.last_day = make_date(2026, 12, 20);
  check.unknown = {{Side::right, care::Function::valve}};
  check.without_spares = check.with_spares = 1;
  CHECK(travel_verdict(check).find("this is no promise") != std::string::npos);
  const auto gaps = travel_gaps(check);
  REQUIRE(gaps.size() == 1);
  CHECK(gaps[0].starts_with("Right: the suspension needs a valve, and none is recorded as worn."));
}

TEST_CASE("A spare that a check stops is told with its reason, and nothing is reached") {
  // A pin wearer whose locking liner declares what the patient reacts to.
  Clinic clinic;
  Item liner;
  liner.code = {"L1"};
  liner.kind = Kind::liner;
  liner.attachment = Attachment::locking;
  liner.constituents = {"mineral oil"};
  clinic.items = {liner};
  clinic.patients = {Patient{{"P-1"}, "", "", std::nullopt, std::nullopt}};
  clinic.sensitivities = {
      Sensitivity{{"P-1"}, "mineral oil", "rash", "patch test", make_date(2026, 1, 1)}};
  Prosthesis prosthesis;
  prosthesis.patient = {"P-1"};
  prosthesis.suspension = Suspension::lanyard;
  prosthesis.delivered_on = make_date(2025, 1, 1);
  clinic.prostheses = {prosthesis};
  Unit unit;
  unit.patient = {"P-1"};
  unit.item = {"L1"};
  unit.issued_on = make_date(2025, 6, 1);
  clinic.units = {unit};
  const auto assessment = forecast(clinic, built_in_priors(), make_date(2026, 11, 25));
  TravelRequest request;
  request.patient = "P-1";
  request.departure = make_date(2026, 12, 1);
  request.back = make_date(2027, 6, 1);
  const auto check = check_travel(assessment, request);
  REQUIRE(check);
  CHECK_FALSE(check->reached);
  REQUIRE(check->parts.size() == 1);
  REQUIRE(check->parts[0].spares > 0);
  CHECK(check->parts[0].to_order == check->parts[0].spares);
  REQUIRE_FALSE(check->parts[0].stops.empty());
  CHECK(travel_part_words(*check, 0, assessment.today).find("unless a clinician decides so") !=
        std::string::npos);
  REQUIRE(check->unknown.size() == 1);  // the lock that the lanyard needs
  CHECK(check->unknown[0].second == care::Function::lock);
}

TEST_CASE("Why a card cannot be written is known before its file is asked for") {
  const Day day{forecast(test_assessment().clinic, built_in_priors(), test_today)};
  auto answers = usual();
  CHECK(card_refusal(day, "P-1", answers).starts_with("No prosthesis of P-1"));
  answers.departure.clear();
  CHECK(card_refusal(day, "P-1", answers).starts_with("Departure:"));
  CHECK(read_paper({0, 0, 0}).languages == std::vector<std::string>{"en"});
  const auto all = static_cast<int>(language_choices().size()) - 1;
  const auto how = read_paper({all, 1, 1});
  CHECK(how.languages.size() == paper_languages().size());
  CHECK(how.paper == exchange::PaperSize::letter);
  CHECK_FALSE(how.names);
  CHECK(visits_known(day, "soon").starts_with("Day:"));
  CHECK(visits_known(day, "2026-12-15") == "1 visit is known for Tue 15 Dec 2026.");
}

}  // namespace travel_form_test
