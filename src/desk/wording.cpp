#include "desk/wording.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/local_formats.hpp"

namespace sparewell::desk {

std::string short_date_words(Date date) {
  return local_formats().date(date, DateShape::day_month);
}

std::string month_words(Date date) {
  return local_formats().date(date, DateShape::month_year);
}

std::string date_words(Date date) {
  return local_formats().date(date, DateShape::day_month_year);
}

std::string day_words(Date date) {
  return local_formats().date(date, DateShape::weekday_and_date);
}

std::string date_words(const std::optional<Date>& date, const std::string& otherwise) {
  return date ? date_words(*date) : otherwise;
}

std::string amount_words(const Money& money) {
  return local_formats().amount(money);
}

std::string amounts_words(const std::vector<Money>& amounts) {
  std::vector<std::string> parts;
  parts.reserve(amounts.size());
  for (const auto& amount : amounts) parts.push_back(amount_words(amount));
  return list_words(parts);
}

std::string chance_words(double chance) {
  if (chance < 0.01) return said("under 1 %");
  if (chance > 0.99) return said("over 99 %");
  return say("{:.0f} %", std::round(chance * 100));
}

std::string number_words(long long number) {
  return local_formats().number(std::to_string(number));
}

std::string count_words(long long count, const std::string& one, const std::string& many) {
  const auto size = static_cast<unsigned long>(std::abs(count));
  return fmt::format("{} {}", number_words(count), said_n(one.c_str(), many.c_str(), size));
}

std::string span_words(int days) {
  if (days < 28) return count_words(days, "day", "days");
  if (days < 120) return count_words(days / 7, "week", "weeks");
  if (days < 730) return count_words(std::lround(days / 30.44), "month", "months");
  return say("{:.1f} years", days / 365.25);
}

std::string list_words(const std::vector<std::string>& parts) {
  return local_formats().list(parts);
}

std::vector<std::string> parts_of_list(const std::string& text, const char* separators) {
  std::vector<std::string> made;
  for (std::size_t from = 0; from < text.size();) {
    const auto to = std::min(text.find_first_of(separators, from), text.size());
    auto part = text.substr(from, to - from);
    part.erase(0, std::min(part.find_first_not_of(' '), part.size()));
    part.erase(part.find_last_not_of(' ') + 1);
    if (!part.empty()) made.push_back(std::move(part));
    from = to + 1;
  }
  return made;
}

std::string capitalised(std::string text) {
  const auto at = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  constexpr int to_capital = 'a' - 'A';
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - to_capital);
  } else if (text.size() > 1 && at(0) == 0xC3 && at(1) >= 0xA0 && at(1) <= 0xBE) {
    // The small letters of Latin-1, two bytes each: U+00E0 to U+00FE.
    text[1] = static_cast<char>(at(1) - to_capital);
  }
  return text;
}

}  // namespace sparewell::desk
