#include "desk/wording.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "clinic/say.hpp"

namespace sparewell::desk {
namespace {

constexpr std::array<std::string_view, 12> months{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                  "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
constexpr std::array<std::string_view, 7> weekdays{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};

/// Commas between groups of three digits, left of the decimal point.
std::string grouped(std::string number) {
  const auto point = number.find('.');
  const std::size_t first = number.starts_with('-') ? 1 : 0;
  auto end = point == std::string::npos ? number.size() : point;
  while (end > first + 3) {
    end -= 3;
    number.insert(end, 1, ',');
  }
  return number;
}

}  // namespace

std::string short_date_words(Date date) {
  const std::chrono::year_month_day parts{date};
  const auto month = static_cast<unsigned>(parts.month());
  return fmt::format("{} {}", static_cast<unsigned>(parts.day()), months[month - 1]);
}

std::string date_words(Date date) {
  const std::chrono::year_month_day parts{date};
  return fmt::format("{} {}", short_date_words(date), static_cast<int>(parts.year()));
}

std::string day_words(Date date) {
  const std::chrono::weekday weekday{date};
  return fmt::format("{} {}", weekdays[weekday.c_encoding()], date_words(date));
}

std::string date_words(const std::optional<Date>& date, const std::string& otherwise) {
  return date ? date_words(*date) : otherwise;
}

std::string amount_words(const Money& money) {
  return grouped(plain_text(money)) + " " + money.currency.code;
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
  return fmt::format("{:.0f} %", std::round(chance * 100));
}

std::string number_words(long long number) {
  return grouped(std::to_string(number));
}

std::string count_words(long long count, const std::string& one, const std::string& many) {
  return fmt::format("{} {}", number_words(count), count == 1 ? one : many);
}

std::string span_words(int days) {
  if (days < 28) return count_words(days, "day", "days");
  if (days < 120) return count_words(days / 7, "week", "weeks");
  if (days < 730) return count_words(std::lround(days / 30.44), "month", "months");
  return fmt::format("{:.1f} years", days / 365.25);
}

std::string list_words(const std::vector<std::string>& parts) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) text += i + 1 == parts.size() ? " and " : ", ";
    text += parts[i];
  }
  return text;
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
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
  return text;
}

}  // namespace sparewell::desk
