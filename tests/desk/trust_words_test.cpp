#include "desk/trust_words.hpp"

#include <doctest/doctest.h>

#include "desk/patient_card.hpp"
#include "desk/sample_day.hpp"
#include "desk/tested_forecasts.hpp"

namespace trust_words_test {

using namespace sparewell;
using namespace sparewell::desk;

TEST_CASE("A span is judged by the interval of its coverage, and by too few endings not at all") {
  CHECK(verdict_on({0.79, 0.75, 0.83}, 0.8) == SpanVerdict::about_right);
  CHECK(verdict_on({0.71, 0.66, 0.76}, 0.8) == SpanVerdict::too_narrow);
  CHECK(verdict_on({0.88, 0.87, 0.89}, 0.8) == SpanVerdict::too_wide);
  CHECK(verdict_on({0.80, 0.64, 0.91}, 0.8) == SpanVerdict::too_few);
  // Surely not 80 %, but too little off to matter.
  CHECK(verdict_on({0.77, 0.76, 0.78}, 0.8) == SpanVerdict::about_right);
  CHECK(verdict_on({0.82, 0.81, 0.83}, 0.8) == SpanVerdict::about_right);
  // Shown as 70 to 80, so it is judged so.
  CHECK(verdict_on({0.75, 0.70, 0.796}, 0.8) == SpanVerdict::about_right);
  // Not even an interval from nothing to everything is called right.
  CHECK(verdict_on({0.8, 0.0, 1.0}, 0.8) == SpanVerdict::too_few);
}

TEST_CASE("The sentence on top says how many, how often with its interval, and what that means") {
  const auto test = tested_forecasts();
  CHECK(span_words(**test, Kind::liner) ==
        "Of 412 liner forecasts, 79 % (75 to 83) ended within their 80 % span: the spans are about "
        "right.");
  CHECK(span_words(**test, Kind::sleeve).find("the spans are too narrow") != std::string::npos);
  CHECK(span_words(**test, Kind::lock)
            .ends_with("too few have ended to say whether the spans are right."));
  CHECK(span_words(**test, Kind::pump).starts_with("Of 1 pump forecast, 92 %"));
  CHECK(span_words(**test, Kind::pump).find("the spans are too wide") != std::string::npos);
  CHECK(span_words(**test, std::nullopt)
            .starts_with("Of 5,244 forecasts for parts of all kinds, 77 % (75 to 79) ended"));
}

TEST_CASE("A kind that was not tested is said to be untested") {
  const auto words = span_words(**tested_forecasts(), Kind::sock);
  CHECK(words ==
        "No sock was in use on the days of the test, so forecasts for socks are untested.");
  CHECK(trust_line(tested_forecasts(), Kind::sock) == words);
  CHECK(error_words(**tested_forecasts(), Kind::sock).empty());
}

TEST_CASE("The error is told in days beside both peers, worse as well as better") {
  CHECK(error_words(**tested_forecasts(), Kind::liner) ==
        "Mean error within 180 days: 20.0 days, against 50.0 days with a fixed calendar interval "
        "(60 % less) and 25.0 days with one law of life for all liners (Weibull) (20 % less).");
  CHECK(error_words(**tested_forecasts(), Kind::lock)
            .find("6.6 days with one law of life for all "
                  "locks (Weibull) (2 % more)") != std::string::npos);
  CHECK(saved_words(10, 10.01) == "the same");
  CHECK(saved_words(10, 0).empty());
}

TEST_CASE("The figures of a test are never told as a guarantee") {
  const auto words = test_words(**tested_forecasts());
  CHECK(words.find("2 days between 20 May 2023 and 29 May 2026") != std::string::npos);
  CHECK(words.find("no guarantee") != std::string::npos);
  CHECK(trust_line(tested_forecasts(), Kind::liner).find("no guarantee") != std::string::npos);
}

TEST_CASE("Beside a forecast stands how its kind did, or that nothing was tested") {
  CHECK(trust_line(nullptr, Kind::liner) ==
        "Not tested on this clinic's history yet: use Wear > Test the forecasts.");
  CHECK(trust_line(tested_forecasts(), Kind::liner) ==
        "Tested on this clinic's history, no guarantee: 80 % spans held 79 % of 412 liner "
        "forecasts (75 to 83): about right.");
  const ForecastTestPtr refused = std::make_shared<const ForecastTest>(refuse("Too little."));
  CHECK(trust_line(refused, Kind::liner).find("too short to test") != std::string::npos);
}

TEST_CASE("Only parts with a forecast have the line, each for its own kind") {
  auto assessment = test_assessment();
  assessment.clinic.items[0].kind = Kind::sleeve;
  const Day day{std::move(assessment)};
  CHECK(trust_of_part(day, "0", tested_forecasts()).find("286 sleeve forecasts") !=
        std::string::npos);
  CHECK(trust_of_part(day, "1", tested_forecasts()).find("412 liner") != std::string::npos);
  CHECK(trust_of_part(day, "2", tested_forecasts()).empty());  // ended
  CHECK(trust_of_part(day, "", tested_forecasts()).empty());
}

}  // namespace trust_words_test
