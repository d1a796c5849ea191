/// Dates, numbers, amounts and lists as people of a language and country write them, from the
/// Unicode Common Locale Data Repository through ICU.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "clinic/date.hpp"
#include "clinic/money.hpp"

namespace sparewell::desk {

enum class DateShape { month_year, day_month, day_month_year, weekday_and_date };

/// Writes by a locale; safe in any thread.
class LocalFormats {
 public:
  virtual ~LocalFormats() = default;

  /// "nov 2026", "25 nov", "25 nov 2026", "mié, 25 nov 2026".
  [[nodiscard]] virtual std::string date(Date day, DateShape shape) const = 0;
  /// `decimal` is a plain decimal number such as "-1234.50".
  [[nodiscard]] virtual std::string number(std::string_view decimal) const = 0;
  /// "1.234,50 EUR".
  [[nodiscard]] virtual std::string amount(const Money& money) const = 0;
  /// "agujas e hilos", "a, b y c".
  [[nodiscard]] virtual std::string list(const std::vector<std::string>& parts) const = 0;
  /// The sign before the decimals.
  [[nodiscard]] virtual char decimal_sign() const = 0;
};

/// As in `locale`, a BCP 47 tag such as "es-MX"; "" is the program's own English ("25 Nov 2026",
/// "1,234.50 EUR"), the same on every computer. nullptr for a locale that ICU does not know.
[[nodiscard]] std::shared_ptr<const LocalFormats> formats_of(const std::string& locale);

/// From now on everything is written as in `locale`, see formats_of. False, and nothing changes,
/// when it is not known. Call before other threads start.
bool follow_locale(const std::string& locale);
[[nodiscard]] const LocalFormats& local_formats();

/// The name of a country in the language of `locale`: "México".
[[nodiscard]] std::string country_name(const std::string& locale);

}  // namespace sparewell::desk
