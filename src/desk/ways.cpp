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

std::string setting(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? "" : value;
}

/// Read before the program speaks, which changes LANGUAGE.
const LanguageSettings at_start{setting("LANGUAGE"), setting("LC_ALL"), setting("LC_MESSAGES"),
                                setting("LANG")};

/// "es" of "es_MX.UTF-8".
std::string code_of(const std::string& locale) {
  return locale.substr(0, locale.find_first_of("_.@"));
}

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

std::string language_asked_for(const LanguageSettings& settings) {
  for (const auto& each : parts_of_list(settings.language, ":")) {
    if (const auto code = code_of(each); is_known(code)) return code;
  }
  for (const auto& locale : {settings.all, settings.messages, settings.lang}) {
    if (locale.empty()) continue;
    const auto code = code_of(locale);
    return is_known(code) ? code : languages.front().code;
  }
  return languages.front().code;
}

std::string language_of_computer() {
  return language_asked_for(at_start);
}

void restore_language_setting() {
  if (at_start.language.empty()) {
    unsetenv("LANGUAGE");
  } else {
    setenv("LANGUAGE", at_start.language.c_str(), 1);
  }
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
