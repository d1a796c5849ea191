/// The words of the program in the language that it speaks: English stands in the code, other
/// languages in catalogues of GNU gettext.
///
/// Every sentence that a person reads goes through say, say_n or said, whole and with its values as
/// {}, so that a translator sees a sentence and not pieces of one.
#pragma once

#include <string>
#include <string_view>

#include <fmt/format.h>

namespace sparewell {

/// The translation of an English text; the text itself where there is none. Safe in any thread.
[[nodiscard]] const char* said(const char* english);
/// The translation that goes with a number: of `one` for 1, of `many` otherwise, in English.
[[nodiscard]] const char* said_n(const char* one, const char* many, unsigned long number);

/// `say("{} is due on {}", part, day)`. A translation may put {0}, {1} in another order.
template <typename... Values>
[[nodiscard]] std::string say(fmt::format_string<Values...> english, const Values&... values) {
  const std::string text{fmt::string_view{english}.data(), fmt::string_view{english}.size()};
  return fmt::vformat(said(text.c_str()), fmt::make_format_args(values...));
}

/// `say_n("{} part", "{} parts", count, count)`.
template <typename... Values>
[[nodiscard]] std::string say_n(fmt::format_string<Values...> one,
                                fmt::format_string<Values...> many, unsigned long number,
                                const Values&... values) {
  const std::string single{fmt::string_view{one}.data(), fmt::string_view{one}.size()};
  const std::string several{fmt::string_view{many}.data(), fmt::string_view{many}.size()};
  return fmt::vformat(said_n(single.c_str(), several.c_str(), number),
                      fmt::make_format_args(values...));
}

/// Marks a text of a table for the catalogue; it is looked up with said when it is shown.
constexpr const char* to_say(const char* english) {
  return english;
}

/// From now on texts come from the catalogue FOLDER/LANGUAGE/LC_MESSAGES/sparewell.mo; "en" speaks
/// English. Call before other threads start.
void speak(const std::string& language, const std::string& folder);

}  // namespace sparewell
