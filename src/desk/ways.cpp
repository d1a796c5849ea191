#include "desk/ways.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <string_view>

#include "clinic/say.hpp"
#include "desk/length_words.hpp"
#include "desk/local_formats.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

struct Language {
  const char* code;
  const char* name;
  const char* usual_country;
};

/// Those of resources/words, and English. The second country is where CLDR takes the language's own
/// conventions from.
constexpr std::array languages{Language{"en", "English", ""}, Language{"es", "Español", "ES"}};
constexpr std::array countries{"AR", "AU", "CA", "CL", "CO", "CR", "ES",
                               "GB", "IE", "MX", "NZ", "PE", "US", "UY"};

bool is_known(std::string_view code) {
  return std::ranges::any_of(languages, [&](const Language& each) { return code == each.code; });
}

std::string example(const std::string& language, const std::string& country) {
  const auto formats = formats_of(locale_of(language, country));
  if (!formats) return {};
  return say("{}, {}", formats->date(make_date(2026, 11, 25), DateShape::day_month_year),
             formats->amount(Money{123450, Currency{"EUR"}}));
}

}  // namespace

std::string language_of_computer() {
  for (const auto* name : {"LANGUAGE", "LC_ALL", "LC_MESSAGES", "LANG"}) {
    const char* value = std::getenv(name);
    if (value == nullptr || *value == '\0') continue;
    // LANGUAGE is a list, "es_MX:en"; the others are one locale, "es_MX.UTF-8".
    for (const auto& each : parts_of_list(value, ":")) {
      const auto code = each.substr(0, each.find_first_of("_.@"));
      if (is_known(code)) return code;
    }
    if (std::string_view{name} != "LANGUAGE") break;
  }
  return languages.front().code;
}

std::string locale_of(const std::string& language, const std::string& country) {
  const auto found = std::ranges::find(languages, language, &Language::code);
  const std::string usual = found == languages.end() ? "" : found->usual_country;
  const auto& chosen = country.empty() ? usual : country;
  return chosen.empty() ? std::string{} : language + "-" + chosen;
}

std::vector<WaysChoice> program_languages() {
  std::vector<WaysChoice> made;
  const auto computers = language_of_computer();
  for (const auto& each : languages) {
    if (computers == each.code) made.push_back({"", say("As this computer: {}", each.name)});
  }
  for (const auto& each : languages) made.push_back({each.code, each.name});
  return made;
}

std::vector<WaysChoice> country_choices(const std::string& language) {
  const auto speaks = language.empty() ? language_of_computer() : language;
  std::vector<WaysChoice> made{{"", say("As usual: {}", example(speaks, ""))}};
  for (const auto* code : countries) {
    made.push_back(
        {code, say("{}: {}", country_name(locale_of(speaks, code)), example(speaks, code))});
  }
  std::sort(made.begin() + 1, made.end(),
            [](const WaysChoice& a, const WaysChoice& b) { return a.words < b.words; });
  return made;
}

void follow(const Ways& ways, const std::string& catalogues) {
  const auto language = ways.language.empty() ? language_of_computer() : ways.language;
  const auto spoken = speak(language, catalogues) ? language : languages.front().code;
  follow_locale(locale_of(spoken, ways.country));
  use_length_unit(ways.inches ? LengthUnit::inch : LengthUnit::cm);
}

}  // namespace sparewell::desk
