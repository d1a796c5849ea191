/// Lengths of a limb as a person reads and types them: in cm or in inches. Records and files are
/// always in cm.
#pragma once

#include <optional>
#include <string>

namespace sparewell::desk {

enum class LengthUnit { cm, inch };

/// The unit that lengths are shown in; cm until use_length_unit.
[[nodiscard]] LengthUnit length_unit();
/// Call before other threads start.
void use_length_unit(LengthUnit unit);

/// How many cm the unit has.
[[nodiscard]] double cm_of_unit();
/// "cm" or "in".
[[nodiscard]] std::string length_unit_words();

/// A circumference, to a tenth of the unit's usual step: "31.5 cm", "12.40 in".
[[nodiscard]] std::string length_words(double cm);
/// A height or a limit with no more decimals than it needs: "4 cm", "1.57 in".
[[nodiscard]] std::string short_length_words(double cm);
/// "30.1 to 31.2 cm".
[[nodiscard]] std::string length_range_words(double low_cm, double high_cm);
/// The number of short_length_words alone, for a field whose label names the unit.
[[nodiscard]] std::string length_number(double cm);

/// What was typed, in cm: "26.4" in the unit that is shown, or with its unit, "26.4 cm" or
/// "10.4 in". A decimal comma is read as well. Empty when it is no number.
[[nodiscard]] std::optional<double> typed_length(const std::string& text);

}  // namespace sparewell::desk
