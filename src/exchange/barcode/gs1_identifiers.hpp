/// The application identifiers of GS1 barcodes: how long each value is and what it may hold.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace sparewell::exchange {

/// One application identifier, such as "10" for a lot.
struct Gs1Identifier {
  std::string_view code;    ///< as it stands in the text that was looked at
  std::string_view format;  ///< parts in turn: set of characters, length, check digit or date
  std::string_view title;   ///< English; "" when the program has no use for the value

  /// "(10) the lot", "(8005)": for sentences.
  [[nodiscard]] std::string words() const;
  /// Characters in the shortest and the longest value.
  [[nodiscard]] std::size_t least() const;
  [[nodiscard]] std::size_t most() const;
  /// The length of values that end without a separator; nullopt for all others, also for those of
  /// one fixed length. GS1 General Specifications, "Element strings with pre-defined length".
  [[nodiscard]] std::optional<std::size_t> predefined_length() const;
  /// What is wrong with a value, as the rest of a sentence that begins with words(); "" when
  /// nothing is. Dates are not looked at.
  [[nodiscard]] std::string fault(std::string_view value) const;
};

/// The identifier that `text` begins with; nullopt when the standard has none such.
[[nodiscard]] std::optional<Gs1Identifier> gs1_identifier_at(std::string_view text);

}  // namespace sparewell::exchange
