/// In which language the program speaks, and how it writes dates, amounts and lengths: what a
/// person chooses, and what the computer suggests.
#pragma once

#include <string>
#include <vector>

namespace sparewell::desk {

struct Ways {
  std::string language;  ///< "en", "es"; "" for the computer's, see language_of_computer
  std::string country;   ///< "MX": whose dates and amounts; "" for the language's usual ones
  bool inches = false;   ///< lengths of a limb in inches instead of cm

  friend bool operator==(const Ways&, const Ways&) = default;
};

struct WaysChoice {
  std::string code;   ///< what Ways holds
  std::string words;  ///< for a person
};

/// Languages that there is a catalogue for, each in its own words; the computer's first.
[[nodiscard]] std::vector<WaysChoice> program_languages();
/// Countries, each with a date and an amount as they are written there in `language`; the usual
/// ones first.
[[nodiscard]] std::vector<WaysChoice> country_choices(const std::string& language);

/// What the environment says about languages: LANGUAGE, LC_ALL, LC_MESSAGES and LANG.
struct LanguageSettings {
  std::string language;  ///< a list, "es_MX:en"
  std::string all;       ///< one locale, "es_MX.UTF-8"; so are the others
  std::string messages;
  std::string lang;
};

/// The language that the settings ask for, in the order of POSIX and gettext; "en" where there is
/// no catalogue for it.
[[nodiscard]] std::string language_asked_for(const LanguageSettings& settings);
/// The language that the computer's settings asked for when the program was started; speaking
/// another one does not change it.
[[nodiscard]] std::string language_of_computer();
/// Puts LANGUAGE, which follow sets, back for programs that are started from this one.
void restore_language_setting();

/// The locale that a language and a country make, see follow_locale: "es-MX"; "" for English
/// without a country.
[[nodiscard]] std::string locale_of(const std::string& language, const std::string& country);

/// From now on the program speaks and writes like that; `catalogues` is the folder that speak
/// reads. Call before other threads start.
void follow(const Ways& ways, const std::string& catalogues);

}  // namespace sparewell::desk
