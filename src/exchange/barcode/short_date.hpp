/// Dates as barcodes write them, in digits without separators.
#pragma once

#include <optional>
#include <string_view>

#include "clinic/date.hpp"

namespace sparewell::exchange {

/// The year that two digits mean when read on `today`: at most 49 years ago and 50 years ahead.
/// GS1 General Specifications, section 7.12.
[[nodiscard]] int year_of_two_digits(int two_digits, Date today);

/// Reads a date whose parts stand where the letters Y, M, D, J (day of the year) and H (hour, which
/// is checked and left out) stand in `pattern`: "YYMMDD", "YYYYMMDD", "MMYY", "YYJJJ" ... Without a
/// day the last one of the month is meant; where `pattern` has d for D, also by day 00. nullopt
/// when `text` has another length, holds anything but digits, or names no day.
[[nodiscard]] std::optional<Date> date_in_digits(std::string_view text, std::string_view pattern,
                                                 Date today);

}  // namespace sparewell::exchange
