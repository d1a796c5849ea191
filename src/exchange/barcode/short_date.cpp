#include "exchange/barcode/short_date.hpp"

#include "exchange/barcode/check_digit.hpp"

namespace sparewell::exchange {
namespace {

/// The number whose digits stand under `letter`; nullopt when the pattern does not have it.
std::optional<int> part(std::string_view text, std::string_view pattern, char letter) {
  const auto first = pattern.find(letter);
  if (first == std::string_view::npos) return std::nullopt;
  int value = 0;
  for (auto at = first; at < pattern.size() && pattern[at] == letter; ++at) {
    value = value * 10 + (text[at] - '0');
  }
  return value;
}

std::optional<Date> day_of_year(std::chrono::year year, int day) {
  const Date first{year / std::chrono::January / 1};
  if (day < 1 || day > (year.is_leap() ? 366 : 365)) return std::nullopt;
  return first + days{day - 1};
}

}  // namespace

int year_of_two_digits(int two_digits, Date today) {
  const int this_year{std::chrono::year_month_day{today}.year()};
  const int century = this_year - this_year % 100;
  const int ahead = two_digits - this_year % 100;
  if (ahead >= 51) return century - 100 + two_digits;
  if (ahead <= -50) return century + 100 + two_digits;
  return century + two_digits;
}

std::optional<Date> date_in_digits(std::string_view text, std::string_view pattern, Date today) {
  if (text.size() != pattern.size() || !all_digits(text)) return std::nullopt;
  const int written = part(text, pattern, 'Y').value_or(0);
  const bool four_digits = pattern.find("YYYY") != std::string_view::npos;
  const std::chrono::year year{four_digits ? written : year_of_two_digits(written, today)};
  if (year < std::chrono::year{1900} || year > std::chrono::year{2199}) return std::nullopt;
  if (part(text, pattern, 'H').value_or(0) > 23) return std::nullopt;
  if (const auto day = part(text, pattern, 'J')) return day_of_year(year, *day);
  const std::chrono::month month{static_cast<unsigned>(part(text, pattern, 'M').value_or(0))};
  if (!month.ok()) return std::nullopt;
  const auto exact_day = part(text, pattern, 'D');
  const auto day = exact_day.value_or(part(text, pattern, 'd').value_or(0));
  if (day == 0 && !exact_day) return Date{year / month / std::chrono::last};
  const std::chrono::year_month_day date{year, month, std::chrono::day{static_cast<unsigned>(day)}};
  if (!date.ok()) return std::nullopt;
  return Date{date};
}

}  // namespace sparewell::exchange
