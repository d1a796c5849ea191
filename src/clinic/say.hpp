/// The words of the program in the language that it speaks: English stands in the code, other
/// languages in catalogues of GNU gettext.
///
/// Every sentence that a person reads goes through say, say_n or said, whole and with its values as
/// {}, so that a translator sees a sentence and not pieces of one.
#pragma once

#include <string>
#include <string_view>
#include <type_traits>

#include <fmt/format.h>

namespace sparewell {

/// The sign before the decimals of a number in a sentence; '.' until write_decimals_with.
[[nodiscard]] char decimal_sign();
/// Call before other threads start.
void write_decimals_with(char sign);

namespace saying {

/// A number with decimals, written with decimal_sign.
struct Decimal {
  double value;
};

template <typename Value>
[[nodiscard]] constexpr decltype(auto) shown(const Value& value) {
  if constexpr (std::is_floating_point_v<Value>) {
    return Decimal{value};
  } else {
    return (value);
  }
}

/// What vformat reads: it takes values that live while it is called.
template <typename... Values>
[[nodiscard]] std::string fill(const char* text, const Values&... values) {
  return fmt::vformat(text, fmt::make_format_args(values...));
}

}  // namespace saying

/// The translation of an English text; the text itself where there is none. Safe in any thread.
[[nodiscard]] const char* said(const char* english);
/// The translation of a short text that means different things in different places: `context` is
/// one of a few words for the place, such as "button", and is not shown.
[[nodiscard]] const char* said_of(const char* context, const char* english);
/// The translation that goes with a number: of `one` for 1, of `many` otherwise, in English.
[[nodiscard]] const char* said_n(const char* one, const char* many, unsigned long number);

/// `say("{} is due on {}", part, day)`. A translation may put {0}, {1} in another order.
template <typename... Values>
[[nodiscard]] std::string say(fmt::format_string<Values...> english, const Values&... values) {
  const std::string text{fmt::string_view{english}.data(), fmt::string_view{english}.size()};
  return saying::fill(said(text.c_str()), saying::shown(values)...);
}

/// `say_n("{} part", "{} parts", count, count)`.
template <typename... Values>
[[nodiscard]] std::string say_n(fmt::format_string<Values...> one,
                                fmt::format_string<Values...> many, unsigned long number,
                                const Values&... values) {
  const std::string single{fmt::string_view{one}.data(), fmt::string_view{one}.size()};
  const std::string several{fmt::string_view{many}.data(), fmt::string_view{many}.size()};
  return saying::fill(said_n(single.c_str(), several.c_str(), number), saying::shown(values)...);
}

/// Marks a text of a table for the catalogue; it is looked up with said when it is shown.
constexpr const char* to_say(const char* english) {
  return english;
}

/// From now on texts come from the catalogue FOLDER/LANGUAGE/LC_MESSAGES/sparewell.mo; "en" speaks
/// English, which needs none. Call before other threads start. False, and English is spoken, where
/// the catalogue is missing.
bool speak(const std::string& language, const std::string& folder);
/// The language that speak was last told: "en", "es".
[[nodiscard]] const std::string& spoken_language();

}  // namespace sparewell

/// As a double is formatted, with the decimal sign of the reader.
template <>
struct fmt::formatter<sparewell::saying::Decimal> : fmt::formatter<double> {
  template <typename Context>
  auto format(sparewell::saying::Decimal number, Context& context) const {
    fmt::memory_buffer written;
    fmt::format_context own{fmt::appender(written), context.args(), context.locale()};
    fmt::formatter<double>::format(number.value, own);
    auto out = context.out();
    for (const char c : written) *out++ = c == '.' ? sparewell::decimal_sign() : c;
    return out;
  }
};
