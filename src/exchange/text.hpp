/// Small help with text from files.
#pragma once

#include <string>
#include <string_view>

namespace sparewell::exchange {

/// Without spaces, tabs, line breaks and no-break spaces (U+00A0) at both ends.
[[nodiscard]] std::string_view trimmed(std::string_view text);

/// ASCII letters in lower case; other bytes as they are.
[[nodiscard]] std::string lower_case(std::string_view text);

/// At most 40 bytes of `text` for a sentence, cut between characters and marked with "...".
[[nodiscard]] std::string excerpt(std::string_view text);

/// "a comma", "a semicolon", "a tab", or the character in quotation marks.
[[nodiscard]] std::string separator_name(char separator);

}  // namespace sparewell::exchange
