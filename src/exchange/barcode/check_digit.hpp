/// Check digits and check characters of barcodes.
#pragma once

#include <optional>
#include <string_view>

namespace sparewell::exchange {

/// Digits only, and at least one.
[[nodiscard]] bool all_digits(std::string_view text);

/// The digit that completes `digits` (GTIN, GLN, SSCC without their last digit): weights 3 and 1
/// from the right, modulo 10. GS1 General Specifications, section 7.9. Precondition: digits only.
[[nodiscard]] char gs1_check_digit(std::string_view digits);

/// True when the last of `digits` is their check digit. Precondition: digits only.
[[nodiscard]] bool has_gs1_check_digit(std::string_view digits);

/// The character that completes an HIBC symbol: modulo 43 over all of `text` with its leading '+'.
/// ANSI/HIBC 2.x. nullopt when a character is none of the 43.
[[nodiscard]] std::optional<char> hibc_check_character(std::string_view text);

}  // namespace sparewell::exchange
