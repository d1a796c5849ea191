#include "clinic/date.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"

namespace sparewell {
namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// Reads `least` to `most` digits at `at`, advancing it; nullopt when there are fewer.
std::optional<int> read_number(std::string_view text, std::size_t& at, int least, int most) {
  int value = 0;
  int count = 0;
  while (count < most && at < text.size() && is_digit(text[at])) {
    value = value * 10 + (text[at] - '0');
    ++at;
    ++count;
  }
  if (count < least) return std::nullopt;
  return value;
}

std::optional<Date> civil(int year, int month, int day) {
  if (year < 1900 || year > 2199 || month < 1 || day < 1) return std::nullopt;
  const std::chrono::year_month_day ymd{std::chrono::year{year},
                                        std::chrono::month{static_cast<unsigned>(month)},
                                        std::chrono::day{static_cast<unsigned>(day)}};
  if (!ymd.ok()) return std::nullopt;
  return Date{ymd};
}

std::size_t run_length(std::string_view pattern, std::size_t at) {
  std::size_t end = at;
  while (end < pattern.size() && pattern[end] == pattern[at]) ++end;
  return end - at;
}

bool is_part(char c) {
  return c == 'Y' || c == 'M' || c == 'D';
}

}  // namespace

std::string iso_text(Date date) {
  const std::chrono::year_month_day ymd{date};
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(ymd.year()),
                     static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day()));
}

std::optional<Date> parse_iso_date(std::string_view text) {
  return DatePattern{}.parse(text);
}

Expected<DatePattern> DatePattern::from_text(std::string_view pattern) {
  int seen_year = 0;
  int seen_month = 0;
  int seen_day = 0;
  for (std::size_t at = 0; at < pattern.size();) {
    const std::size_t run = run_length(pattern, at);
    switch (pattern[at]) {
      case 'Y':
        seen_year += run == 4 ? 1 : 9;
        break;
      case 'M':
        seen_month += run <= 2 ? 1 : 9;
        break;
      case 'D':
        seen_day += run <= 2 ? 1 : 9;
        break;
      default:
        break;
    }
    at += run;
  }
  if (seen_year != 1 || seen_month != 1 || seen_day != 1) {
    return refuse(
        say("The date pattern '{}' must name YYYY, MM and DD once each, for example DD.MM.YYYY.",
            pattern));
  }
  DatePattern made;
  made.pattern_ = std::string{pattern};
  return made;
}

std::optional<Date> DatePattern::parse(std::string_view text) const {
  int year = 0;
  int month = 0;
  int day = 0;
  std::size_t at = 0;
  for (std::size_t in_pattern = 0; in_pattern < pattern_.size();) {
    const char part = pattern_[in_pattern];
    if (!is_part(part)) {
      if (at >= text.size() || text[at] != part) return std::nullopt;
      ++at;
      ++in_pattern;
      continue;
    }
    const std::size_t run = run_length(pattern_, in_pattern);
    const int most = part == 'Y' ? 4 : 2;
    const auto value = read_number(text, at, static_cast<int>(run), most);
    if (!value) return std::nullopt;
    (part == 'Y' ? year : part == 'M' ? month : day) = *value;
    in_pattern += run;
  }
  if (at != text.size()) return std::nullopt;
  return civil(year, month, day);
}

}  // namespace sparewell
