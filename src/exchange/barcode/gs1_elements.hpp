/// Takes the text of a GS1 barcode apart into its fields.
#pragma once

#include <string_view>
#include <vector>

#include "clinic/refusal.hpp"
#include "exchange/barcode/label.hpp"

namespace sparewell::exchange {

/// What stands for FNC1 in the text that a scanner sends (ISO/IEC 16022, 5.2.4.6).
inline constexpr char group_separator = '\x1D';

/// The fields of an element string as scanners send it: identifiers without parentheses, and a
/// group separator after every value that has no predefined length, unless it is the last. One more
/// in front or after other values does no harm. Values are checked against gs1_identifiers; dates
/// are not looked at.
[[nodiscard]] Expected<std::vector<Element>> gs1_elements_scanned(std::string_view text);

/// The same for the text that people read on a label: every identifier in parentheses, blanks
/// around values left out. Two to four digits in parentheses always count as an identifier.
[[nodiscard]] Expected<std::vector<Element>> gs1_elements_typed(std::string_view text);

}  // namespace sparewell::exchange
