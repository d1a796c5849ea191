#include "desk/effect_words.hpp"

#include <doctest/doctest.h>

#include "desk/surprise_words.hpp"

namespace effect_words_test {

using namespace sparewell;
using namespace sparewell::desk;
using wear::Factor;
using wear::FactorEffect;

TEST_CASE("An effect says the factor, the amount, the life ratio and its interval") {
  CHECK(effect_words(Kind::sleeve, {Factor::kneeling_hours, 2, 0.5, 0.41, 0.604, 0.64}) ==
        "kneeling two hours a day: sleeves last 0.50 times as long (0.41 to 0.60)");
  CHECK(effect_words(Kind::liner, {Factor::activity, 1, 0.9, 0.85, 0.95, 1}) ==
        "one activity level higher: liners last 0.90 times as long (0.85 to 0.95)");
  CHECK(effect_words(Kind::pump, {Factor::wear_hours, 4, 0.8, 0.7, 0.9, 1}) ==
        "worn four hours a day longer: pumps last 0.80 times as long (0.70 to 0.90)");
  CHECK(effect_words(Kind::lock, {Factor::sweating_low, 1, 1.3, 1.1, 1.5, 1}) ==
        "low sweating: locks last 1.30 times as long (1.10 to 1.50)");
}

TEST_CASE("An effect whose interval holds 1 is not called one") {
  CHECK(effect_words(Kind::pump, {Factor::impact_sport, 1, 0.9, 0.7, 1.2, 0.9}) ==
        "impact sport: no clear effect on pumps (0.70 to 1.20 times as long)");
  CHECK(effect_words(Kind::sock, {Factor::sweating_high, 1, 1, 1, 1, 1})
            .starts_with("high sweating: no clear effect on socks"));
}

TEST_CASE("Effects without wear endings are told as expectations, not as experience") {
  wear::KindLife life;
  life.kind = Kind::pump;
  CHECK(
      effect_grounds(life) ==
      "No pump has worn out in the records yet: these are general expectations, not experience of "
      "this clinic.");
  life.units = 1204;
  life.wear_endings = 800;
  CHECK(effect_grounds(life) == "From 1,204 pumps with 800 wear endings.");
  life.note = "Their shape was held.";
  CHECK(effect_grounds(life) ==
        "From 1,204 pumps with 800 wear endings. Their shape was held.");
}

TEST_CASE("A flagged lot says what was seen, what was to be expected, and how rare that is") {
  wear::EarlyEndings lot;
  lot.item = {"S-2"};
  lot.lot = "A12";
  lot.units = 9;
  lot.early = 6;
  lot.early_patients = 4;
  lot.patients = 7;
  lot.expected = 0.84;
  lot.p_value = 0.0004;
  CHECK(early_endings_words(lot) ==
        "Lot A12 of S-2: 6 of 9 units wore out early, 0.8 were to be expected; so many by chance: "
        "once in 2,500 times. 4 of 7 patients had such an ending.");
  lot.lot.clear();
  lot.p_value = 0;
  CHECK(early_endings_words(lot).starts_with("Item S-2: 6 of 9 units"));
  CHECK(early_endings_words(lot).find("less than once in 1,000,000 times") != std::string::npos);
}

TEST_CASE("The summary says what was tested, what was flagged and what could not be judged") {
  wear::Surprises found;
  found.lots.resize(3);
  found.lots[0].flagged = true;
  found.items.resize(1);
  CHECK(surprises_summary(found) == "1 of 3 lots tested flagged, 0 of 1 item tested flagged.");
  found.lots_too_small = 1;
  found.units_without_lot = 2;
  CHECK(surprises_summary(found) ==
        "1 of 3 lots tested flagged, 0 of 1 item tested flagged. 1 lot of fewer than 3 units could "
        "not be judged. 2 units have no recorded lot.");
}

TEST_CASE("No flag is never told as safe") {
  CHECK(surprises_caution().find("not proof of a defect") != std::string::npos);
  CHECK(surprises_caution().find("not proof of safety") != std::string::npos);
}

TEST_CASE("What stands against a fit is told with its kind, and nothing when all are sound") {
  wear::ClinicLife fitted;
  fitted.kinds[Kind::liner].kind = Kind::liner;
  CHECK(fit_notes(fitted).empty());
  fitted.kinds[Kind::pin].note = "Lives are too much alike.";
  CHECK(fit_notes(fitted) == std::vector<std::string>{"pins: Lives are too much alike."});
}

}  // namespace effect_words_test
