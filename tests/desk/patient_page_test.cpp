#include <doctest/doctest.h>

#include "desk/booking_form.hpp"
#include "desk/patient_card.hpp"
#include "desk/patient_list.hpp"
#include "desk/sample_day.hpp"

namespace patient_page_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

DayPtr test_day() {
  return std::make_shared<const Day>(test_assessment());
}

}  // namespace

TEST_CASE("A patient is found by reference, name, item, serial and lot, of ended parts too") {
  PatientList list;
  list.show(test_day());
  CHECK(list.count_shown() == "2 patients");
  for (const auto* typed : {"p-1", "fieldmouse ana", "a-28", "s1", "lot-s3"}) {
    CAPTURE(typed);
    list.table().find(typed);
    REQUIRE(list.table().size() == 1);
    CHECK(list.table().at(0).id == "P-1");
  }
  CHECK(list.count_shown() == "1 of 2 patients");
  list.table().find("nobody");
  CHECK(list.empty_words().starts_with("No patient answers"));
}

TEST_CASE("The list names the part in use that is expected to be worn out first") {
  PatientList list;
  list.show(test_day());
  CHECK(list.table().at(0).cells[4].text == "locking liner, left");
}

TEST_CASE("The card keeps left and right apart, and ended parts below and only when asked for") {
  const auto day = test_day();
  const auto card = patient_card(*day, {"P-1"}, false);
  CHECK(card.ended == 1);
  REQUIRE(card.strips.size() == 4);
  CHECK(card.strips[0].heading == "Left side");
  CHECK(card.strips[1].label == "Locking liner 28  S2");
  CHECK(card.strips[2].heading == "Right side");
  const auto with_ended = patient_card(*day, {"P-1"}, true);
  REQUIRE(with_ended.strips.size() == 6);
  CHECK(with_ended.strips[4].heading == "No longer in use");
  CHECK(with_ended.strips[5].words.ends_with("Ended 6 Oct 2026, hole."));
  CHECK_FALSE(with_ended.strips[5].p50);
}

TEST_CASE("The card says what is booked for the patient and whether it can be served") {
  auto assessment = test_assessment();
  assessment.clinic.reservations = {{{"P-1"}, {"A-28"}, "main store", 2, test_today + days{20}},
                                    {{"P-1"}, {"B-28"}, "main store", 0, test_today},
                                    {{"P-2"}, {"C-28"}, "main store", 1, std::nullopt}};
  assessment.clinic.shelf = {{{{"A-28"}, "X", std::nullopt}, "main store", 1}};
  const auto card = patient_card(Day{std::move(assessment)}, {"P-1"}, false);
  REQUIRE(card.bookings.size() == 1);
  CHECK(card.bookings[0] ==
        "Booked: 2 pieces of A-28 for 15 Dec 2026 at main store; 1 in stock, 1 neither in stock "
        "nor on order.");
  CHECK(patient_card(*test_day(), {"P-1"}, false).bookings.empty());
}

TEST_CASE("The form to book begins with the patient's items and the next visit") {
  const auto form = booking_form(*test_day(), {"P-1"});
  CHECK(form.items == std::vector<std::string>{"A-28", "B-28", "C-28"});
  CHECK(booking_form(*test_day(), {"P-2"}).items.front() == "C-28");
  CHECK(form.day == "2026-12-15");
  CHECK(booking_form(*test_day(), {"P-2"}).day.empty());
  CHECK(form.places == std::vector<std::string>{"main store"});
  BookingAnswers answers{"A-28", form.sides.front(), "2", "2026-12-15", "main store", "", ""};
  const auto read = read_booking("P-1", answers);
  REQUIRE(read);
  CHECK_FALSE(read->side);
  CHECK(read->on == make_date(2026, 12, 15));
  answers.pieces = "two";
  CHECK_FALSE(read_booking("P-1", answers));
  answers.pieces = "2";
  answers.day = "15.12.";
  CHECK_FALSE(read_booking("P-1", answers));
  CHECK_FALSE(cancel_form(*test_day(), {"P-1"}));
}

TEST_CASE("Parts that alternate say so as the wear model counts them; others are worn always") {
  const auto worn = [](Kind kind, std::optional<double> recorded) {
    auto assessment = test_assessment();
    for (auto& item : assessment.clinic.items) item.kind = kind;
    assessment.clinic.units = {test_unit("P-1", Side::left, "A-28", "S1", 100),
                               test_unit("P-1", Side::left, "B-28", "S2", 50)};
    for (auto& unit : assessment.clinic.units) unit.share.reset();
    assessment.clinic.units[0].share = recorded;
    assessment.lives.clear();
    return patient_card(Day{std::move(assessment)}, {"P-1"}, false).parts.at(1).cells.at(10).text;
  };
  CHECK(worn(Kind::liner, std::nullopt) == "1 of 2 in turn");
  CHECK(worn(Kind::lock, std::nullopt) == "always");
  // A part with a recorded share takes no turn among those without one.
  CHECK(worn(Kind::liner, 0) == "always");
}

TEST_CASE("A drawn life has the same said in a sentence, with its spread and its order-by day") {
  const auto card = patient_card(*test_day(), {"P-2"}, false);
  const auto& strip = card.strips.at(1);
  REQUIRE(strip.p10);
  REQUIRE(strip.order_by);
  // The catalogue quotes 10 days and nothing was received yet, so the quotation is the lead time.
  CHECK(*strip.order_by == *strip.p10 - days{10});
  CHECK(strip.words.find("Even chance of being worn out by ") != std::string::npos);
  CHECK(strip.words.find("eight in ten") != std::string::npos);
  CHECK(strip.words.find("Order a replacement by ") != std::string::npos);
  CHECK(strip.words.find("lost") == std::string::npos);  // no rate, no word
}

TEST_CASE("What else may end a part, and its use-by date where it matters, are said") {
  const auto said = [](std::optional<int> use_by_in_days, double rate) {
    auto assessment = test_assessment();
    auto& worn = assessment.lives.at(2);
    worn.others.rates[wear::position_of(EndReason::lost)] = {20, 20 * 365 / rate};
    if (use_by_in_days) {
      const Unit& unit = assessment.clinic.units.at(worn.unit);
      assessment.clinic.shelf.push_back(
          {{unit.item, unit.lot, test_today + days{*use_by_in_days}}, "main store", 1});
    }
    return patient_card(Day{std::move(assessment)}, {"P-2"}, false).strips.at(1).words;
  };
  // Worn out first with a chance of about a half by then, so less than 5 %.
  CHECK(said({}, 0.05).find("outgrown or exchanged: 4 % within a year.") != std::string::npos);
  CHECK(said({}, 0.005).find("outgrown") == std::string::npos);
  CHECK(said({}, 0.05).find("se by") == std::string::npos);
  CHECK(said(-1, 0.05).find("use-by date, 24 Nov 2026, has passed.") != std::string::npos);
  CHECK(said(30, 0.05).find("Use by 25 Dec 2026.") != std::string::npos);
  CHECK(said(800, 0.05).find("se by") == std::string::npos);  // far beyond what is at stake
}

TEST_CASE("No recorded sensitivity is not said to be safe") {
  const auto card = patient_card(*test_day(), {"P-1"}, false);
  CHECK_FALSE(card.sensitive);
  REQUIRE(card.sensitivities.size() == 1);
  CHECK(card.sensitivities[0].find("does not mean that there is none") != std::string::npos);
  CHECK(care_caution().find("does not replace the judgement of licensed clinicians") !=
        std::string::npos);
}

TEST_CASE("A recorded sensitivity is told with how it was established") {
  auto assessment = test_assessment();
  assessment.clinic.sensitivities = {
      {{"P-1"}, "thiurams", "contact dermatitis", "patch test", make_date(2025, 3, 3)}};
  const Day day{std::move(assessment)};
  const auto card = patient_card(day, {"P-1"}, false);
  CHECK(card.sensitive);
  CHECK(card.sensitivities.at(0) == "Thiurams: contact dermatitis, patch test, noted 3 Mar 2025.");
}

TEST_CASE("Use that is not recorded is said to be assumed, and later changes are named") {
  auto assessment = test_assessment();
  const auto before = patient_card(Day{assessment}, {"P-1"}, false);
  CHECK(before.usage == "Use is not recorded; reference use is assumed.");
  Usage now{{"P-1"}, test_today - days{9}, Activity::k3, std::nullopt, std::nullopt, {}, {}};
  Usage later{{"P-1"}, test_today + days{9}, {}, 2.0, std::nullopt, {}, {}};
  assessment.clinic.usage = {later, now};
  CHECK(patient_card(Day{assessment}, {"P-1"}, false).usage ==
        "Activity K3. From 4 Dec 2026: kneels 2 h a day.");
}

}  // namespace patient_page_test
