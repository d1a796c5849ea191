#include "clinic/supplier.hpp"

#include <array>
#include <charconv>

#include "clinic/words.hpp"

namespace sparewell {
namespace {

constexpr std::array<std::string_view, 7> short_names{"Mon", "Tue", "Wed", "Thu",
                                                      "Fri", "Sat", "Sun"};
constexpr std::array<std::string_view, 7> long_names{"Monday", "Tuesday",  "Wednesday", "Thursday",
                                                     "Friday", "Saturday", "Sunday"};
constexpr unsigned monday_to_friday = 0b0011111;

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

std::optional<int> whole_number(std::string_view text) {
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value;
}

std::optional<unsigned> weekday_index(std::string_view text) {
  for (unsigned i = 0; i < short_names.size(); ++i) {
    if (same_word(text, short_names[i]) || same_word(text, long_names[i])) return i;
  }
  const auto number = whole_number(text);
  if (number && *number >= 1 && *number <= 7) return static_cast<unsigned>(*number - 1);
  return std::nullopt;
}

unsigned weekday_of(Date day) { return std::chrono::weekday{day}.iso_encoding() - 1; }

}  // namespace

std::optional<OrderDays> parse_order_days(std::string_view text) {
  OrderDays made;
  text = trimmed(text);
  if (text.empty()) return made;
  if (const auto number = whole_number(text); number && *number > 7 && *number <= 366) {
    made.every_days = *number;
    return made;
  }
  while (true) {
    const std::size_t cut = text.find(';');
    const auto index = weekday_index(trimmed(text.substr(0, cut)));
    if (!index) return std::nullopt;
    made.weekdays |= 1U << *index;
    if (cut == std::string_view::npos) return made;
    text.remove_prefix(cut + 1);
  }
}

std::string order_days_text(const OrderDays& order_days) {
  if (order_days.every_days > 0) return std::to_string(order_days.every_days);
  std::string joined;
  for (unsigned i = 0; i < short_names.size(); ++i) {
    if ((order_days.weekdays >> i & 1U) == 0) continue;
    if (!joined.empty()) joined += ';';
    joined += short_names[i];
  }
  return joined;
}

bool is_order_day(const OrderDays& order_days, Date day) {
  if (order_days.every_days > 0) return true;
  const unsigned mask = order_days.weekdays == 0 ? monday_to_friday : order_days.weekdays;
  return (mask >> weekday_of(day) & 1U) != 0;
}

Date next_order_day(const OrderDays& order_days, Date day) {
  if (order_days.every_days > 0) return day + days{order_days.every_days};
  do {
    day += days{1};
  } while (!is_order_day(order_days, day));
  return day;
}

}  // namespace sparewell
