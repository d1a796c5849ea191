/// Civil dates without a time zone: the day something happened at the clinic.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

#include "clinic/refusal.hpp"

namespace sparewell {

using Date = std::chrono::sys_days;
using std::chrono::days;

/// Whole days from `from` to `to`; negative when `to` is earlier.
[[nodiscard]] inline int days_between(Date from, Date to) {
  return static_cast<int>((to - from).count());
}

/// A date from its civil parts. Precondition: the parts name a real day.
[[nodiscard]] inline Date make_date(int year, unsigned month, unsigned day) {
  return Date{std::chrono::year{year} / std::chrono::month{month} / std::chrono::day{day}};
}

/// "2026-11-25" (ISO 8601, extended calendar format).
[[nodiscard]] std::string iso_text(Date date);

/// Reads ISO 8601 "YYYY-MM-DD" and nothing else; years 1900 to 2199.
[[nodiscard]] std::optional<Date> parse_iso_date(std::string_view text);

/// One declared way of writing dates in a folder of files. Dates are never guessed.
class DatePattern {
 public:
  /// ISO 8601, YYYY-MM-DD.
  DatePattern() = default;

  /// `pattern` names day, month and year once each as DD or D, MM or M, and YYYY, with any
  /// separators, for example "DD.MM.YYYY" or "M/D/YYYY". D and M accept one or two digits.
  [[nodiscard]] static Expected<DatePattern> from_text(std::string_view pattern);

  [[nodiscard]] std::optional<Date> parse(std::string_view text) const;
  [[nodiscard]] const std::string& text() const { return pattern_; }

 private:
  std::string pattern_ = "YYYY-MM-DD";
};

}  // namespace sparewell
