#include "desk/own_formats.hpp"

#include <array>

#include <fmt/format.h>

namespace sparewell::desk {
namespace {

constexpr std::array<std::string_view, 12> months{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                  "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
constexpr std::array<std::string_view, 7> weekdays{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};

class OwnFormats : public LocalFormats {
 public:
  std::string date(Date day, DateShape shape) const override {
    const std::chrono::year_month_day parts{day};
    const auto month = months[static_cast<unsigned>(parts.month()) - 1];
    const auto year = static_cast<int>(parts.year());
    if (shape == DateShape::month_year) return fmt::format("{} {}", month, year);
    auto text = fmt::format("{} {}", static_cast<unsigned>(parts.day()), month);
    if (shape == DateShape::day_month) return text;
    text += fmt::format(" {}", year);
    if (shape == DateShape::day_month_year) return text;
    return fmt::format("{} {}", weekdays[std::chrono::weekday{day}.c_encoding()], text);
  }

  /// Commas between groups of three digits, left of the decimal point.
  std::string number(std::string_view decimal) const override {
    std::string text{decimal};
    const auto point = text.find('.');
    const std::size_t first = text.starts_with('-') ? 1 : 0;
    auto end = point == std::string::npos ? text.size() : point;
    while (end > first + 3) {
      end -= 3;
      text.insert(end, 1, ',');
    }
    return text;
  }

  std::string amount(const Money& money) const override {
    return fmt::format("{} {}", number(plain_text(money)), money.currency.code);
  }

  std::string list(const std::vector<std::string>& parts) const override {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      if (i > 0) text += i + 1 == parts.size() ? " and " : ", ";
      text += parts[i];
    }
    return text;
  }

  char decimal_sign() const override { return '.'; }
};

}  // namespace

std::shared_ptr<const LocalFormats> own_formats() {
  return std::make_shared<OwnFormats>();
}

}  // namespace sparewell::desk
