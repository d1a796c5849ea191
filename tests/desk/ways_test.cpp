#include "desk/ways.hpp"

#include <algorithm>
#include <cstdlib>

#include <doctest/doctest.h>

#include "clinic/say.hpp"
#include "clinic/words.hpp"
#include "desk/length_words.hpp"
#include "desk/local_formats.hpp"
#include "desk/speaking.hpp"
#include "desk/typed_amounts.hpp"
#include "desk/wording.hpp"

namespace ways_test {

using namespace sparewell;
using namespace sparewell::desk;
using sparewell::test::Speaking;

namespace {

const Date day = make_date(2026, 11, 25);
const Money money{123450, Currency{"EUR"}};

}  // namespace

// The expected texts are those of the Unicode Common Locale Data Repository, release 42 (Debian
// 12's ICU 72): abbreviated dates by the skeletons yMMMd, MMMd and yMMMEd, and currencies by ISO
// code.
TEST_CASE("Dates and amounts are written as in the chosen country") {
  const Speaking spanish{{"es", "", false}};
  CHECK(date_words(day) == "25 nov 2026");
  CHECK(short_date_words(day) == "25 nov");
  CHECK(month_words(day) == "nov 2026");
  CHECK(day_words(day) == "mié, 25 nov 2026");
  CHECK(amount_words(money) == "1234,50 EUR");
  CHECK(amount_words(Money{-123456789, Currency{"EUR"}}) == "-1.234.567,89 EUR");
  CHECK(amount_words(Money{1234, Currency{"JPY"}}) == "1234 JPY");
  CHECK(number_words(12345) == "12.345");
  CHECK(chance_words(0.125) == "13 %");
  CHECK(say("{:.1f}", 0.5) == "0,5");
}

TEST_CASE("A country may be another than the language's usual one") {
  const Speaking mexican{{"es", "MX", false}};
  CHECK(amount_words(money) == "EUR 1,234.50");
  CHECK(day_words(day) == "mié, 25 de nov de 2026");
  const Speaking american{{"en", "US", false}};
  CHECK(date_words(day) == "Nov 25, 2026");
  CHECK(amount_words(money) == "EUR 1,234.50");
}

TEST_CASE("The program's own English is the same on every computer") {
  const Speaking own{{"en", "", false}};
  CHECK(date_words(day) == "25 Nov 2026");
  CHECK(day_words(day) == "Wed 25 Nov 2026");
  CHECK(amount_words(money) == "1,234.50 EUR");
  CHECK(amount_words(Money{-123456789, Currency{"EUR"}}) == "-1,234,567.89 EUR");
  CHECK(list_words({"a", "b", "c"}) == "a, b and c");
}

// Real Academia Española, Ortografía de la lengua española: "y" becomes "e" before the sound of i.
TEST_CASE("Lists are joined by the rules of the language") {
  const Speaking spanish{{"es", "", false}};
  CHECK(list_words({"manga", "perno"}) == "manga y perno");
  CHECK(list_words({"liner", "manga", "perno"}) == "liner, manga y perno");
  CHECK(list_words({"pierna", "irritación"}) == "pierna e irritación");
}

TEST_CASE("The program speaks Spanish from its catalogue") {
  {
    const Speaking spanish{{"es", "", false}};
    CHECK(spoken_language() == "es");
    CHECK(std::string{said("Patients")} == "Pacientes");
    CHECK(count_words(1, "piece", "pieces") == "1 unidad");
    CHECK(count_words(20000, "piece", "pieces") == "20.000 unidades");
    CHECK(shown_word(Side::left) == "izquierdo");
    CHECK(word(Side::left) == "left");
  }
  CHECK(std::string{said("Patients")} == "Patients");
}

TEST_CASE("A language without a catalogue falls back to English") {
  const Speaking unknown{{"xx", "", false}};
  CHECK(spoken_language() == "en");
  CHECK(date_words(day) == "25 Nov 2026");
  CHECK_FALSE(follow_locale("no locale"));
  CHECK(date_words(day) == "25 Nov 2026");
}

TEST_CASE("The computer's language is that of the first setting that names one we speak") {
  CHECK(language_asked_for({"", "", "", ""}) == "en");
  CHECK(language_asked_for({"", "", "", "es_MX.UTF-8"}) == "es");
  CHECK(language_asked_for({"", "C.UTF-8", "", "es_MX.UTF-8"}) == "en");
  CHECK(language_asked_for({"", "", "es", "en_GB.UTF-8"}) == "es");
  CHECK(language_asked_for({"de:es", "", "", "en_GB.UTF-8"}) == "es");
  CHECK(language_asked_for({"de", "", "", "es_ES"}) == "es");
}

TEST_CASE("Speaking another language does not change what the computer's is") {
  const auto computers = language_of_computer();
  const Speaking other{{computers == "es" ? "en" : "es", "", false}};
  CHECK(language_of_computer() == computers);
  const auto first = program_languages().front();
  CHECK(first.code.empty());
  CHECK(first.words.find(computers == "es" ? "Español" : "English") != std::string::npos);
  const char* before = std::getenv("LANGUAGE");
  REQUIRE(before != nullptr);
  const std::string speaking = before;
  restore_language_setting();
  const char* after = std::getenv("LANGUAGE");
  CHECK((after == nullptr || speaking != after));
  setenv("LANGUAGE", speaking.c_str(), 1);
}

TEST_CASE("Countries are offered with an example, the usual way first") {
  const auto choices = country_choices("es");
  REQUIRE(choices.size() > 5);
  CHECK(choices.front().code.empty());
  CHECK(choices.front().words.find("25 nov 2026, 1234,50 EUR") != std::string::npos);
  const auto mexico = std::find_if(choices.begin(), choices.end(),
                                   [](const WaysChoice& each) { return each.code == "MX"; });
  REQUIRE(mexico != choices.end());
  CHECK(mexico->words == "México: 25 nov 2026, EUR 1,234.50");
  CHECK(locale_of("es", "") == "es-ES");
  CHECK(locale_of("en", "").empty());
}

// 1 inch is 25.4 mm exactly: NIST Special Publication 811 (2008), appendix B.8.
TEST_CASE("Lengths are shown and typed in cm or in inches") {
  CHECK(length_words(31.5) == "31.5 cm");
  CHECK(short_length_words(4) == "4 cm");
  CHECK(length_range_words(30.14, 31.2) == "30.1 to 31.2 cm");
  CHECK(typed_length("26.4") == 26.4);
  CHECK(typed_length("26,4 cm") == 26.4);
  CHECK(typed_length("10 in") == doctest::Approx(25.4));
  CHECK_FALSE(typed_length(""));
  CHECK_FALSE(typed_length("wide"));
  CHECK_FALSE(typed_length("26.4.1"));
  const Speaking inches{{"en", "", true}};
  CHECK(length_words(31.75) == "12.50 in");
  CHECK(short_length_words(5.08) == "2 in");
  CHECK(length_number(5.08) == "2");
  CHECK(*typed_length("12.5") == doctest::Approx(31.75));
  CHECK(*typed_length("31.75 cm") == doctest::Approx(31.75));
}

TEST_CASE("Amounts are typed with a point or a comma") {
  const Currency euro{"EUR"};
  CHECK(typed_amount("12.50", euro)->minor == 1250);
  CHECK(typed_amount("12,50", euro)->minor == 1250);
  CHECK_FALSE(typed_amount("1.234,50", euro));
  CHECK_FALSE(typed_amount("12,505", euro));
}

}  // namespace ways_test
