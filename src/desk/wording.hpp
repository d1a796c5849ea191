/// Dates, amounts and counts as the screens write them: in the language of the program and by the
/// locale that local_formats follows. What the examples show is the program's own English, which is
/// the same on every computer.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/date.hpp"
#include "clinic/money.hpp"

namespace sparewell::desk {

/// "25 Nov 2026".
[[nodiscard]] std::string date_words(Date date);
/// "25 Nov": for days that are near.
[[nodiscard]] std::string short_date_words(Date date);
/// "Nov 2026": the month of the date.
[[nodiscard]] std::string month_words(Date date);
/// "Wed 25 Nov 2026".
[[nodiscard]] std::string day_words(Date date);
/// The date's words, or `otherwise` when there is none.
[[nodiscard]] std::string date_words(const std::optional<Date>& date, const std::string& otherwise);

/// "1,234.50 EUR".
[[nodiscard]] std::string amount_words(const Money& money);
/// Amounts of one or more currencies: "1,234.50 EUR and 80.00 USD"; "" when there are none.
[[nodiscard]] std::string amounts_words(const std::vector<Money>& amounts);

/// A chance from 0 to 1: "12 %", "under 1 %", "over 99 %"; never a bare 0 % or 100 %.
[[nodiscard]] std::string chance_words(double chance);

/// "1,234".
[[nodiscard]] std::string number_words(long long number);
/// "1 line", "4 lines"; `one` and `many` are English and looked up in the catalogue.
[[nodiscard]] std::string count_words(long long count, const std::string& one,
                                      const std::string& many);

/// How long ago or ahead: "12 days", "7 weeks", "9 months", "3 years"; `days` is not negative.
[[nodiscard]] std::string span_words(int days);

/// "a", "a and b", "a, b and c".
[[nodiscard]] std::string list_words(const std::vector<std::string>& parts);

/// The parts of a typed list, without spaces around them; empty parts are left out. Any of
/// `separators` stands between them.
[[nodiscard]] std::vector<std::string> parts_of_list(const std::string& text,
                                                     const char* separators);

/// With a capital first letter, also where it has an accent (Latin-1).
[[nodiscard]] std::string capitalised(std::string text);

}  // namespace sparewell::desk
