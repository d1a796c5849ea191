#include "clinic/money.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>

#include <fmt/format.h>

#include "clinic/say.hpp"

namespace sparewell {
namespace {

std::int64_t power_of_ten(int exponent) {
  std::int64_t value = 1;
  for (int i = 0; i < exponent; ++i) value *= 10;
  return value;
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

}  // namespace

int Currency::decimals() const {
  // ISO 4217 list one; every code not named here has two.
  static constexpr std::array<std::string_view, 16> none{"BIF", "CLP", "DJF", "GNF", "ISK", "JPY",
                                                         "KMF", "KRW", "PYG", "RWF", "UGX", "UYI",
                                                         "VND", "VUV", "XAF", "XOF"};
  static constexpr std::array<std::string_view, 7> three{"BHD", "IQD", "JOD", "KWD",
                                                         "LYD", "OMR", "TND"};
  if (std::ranges::find(none, code) != none.end()) return 0;
  if (std::ranges::find(three, code) != three.end()) return 3;
  return 2;
}

std::optional<Currency> parse_currency(std::string_view text) {
  if (text.size() != 3) return std::nullopt;
  std::string code;
  for (const char c : text) {
    if (c >= 'a' && c <= 'z') {
      code += static_cast<char>(c - 'a' + 'A');
    } else if (c >= 'A' && c <= 'Z') {
      code += c;
    } else {
      return std::nullopt;
    }
  }
  return Currency{code};
}

double Money::major() const {
  return static_cast<double>(minor) / static_cast<double>(power_of_ten(currency.decimals()));
}

Money operator+(const Money& a, const Money& b) {
  if (a.currency != b.currency) {
    throw std::logic_error("amounts in " + a.currency.code + " and " + b.currency.code +
                           " cannot be added");
  }
  return Money{a.minor + b.minor, a.currency};
}

Money operator*(const Money& each, std::int64_t quantity) {
  return Money{each.minor * quantity, each.currency};
}

std::string plain_text(const Money& money) {
  const int decimals = money.currency.decimals();
  const std::int64_t unit = power_of_ten(decimals);
  const std::int64_t size = money.minor < 0 ? -money.minor : money.minor;
  const char* sign = money.minor < 0 ? "-" : "";
  if (decimals == 0) return fmt::format("{}{}", sign, size);
  return fmt::format("{}{}.{:0{}}", sign, size / unit, size % unit, decimals);
}

std::string text(const Money& money) {
  return plain_text(money) + " " + money.currency.code;
}

Expected<Money> parse_money(std::string_view text, const Currency& currency, char decimal_sign) {
  const auto not_a_number = [&] {
    return refuse(say("'{}' is not an amount; write digits with '{}' before the decimals", text,
                      decimal_sign));
  };
  std::string_view rest = text;
  const bool negative = rest.starts_with('-');
  if (negative) rest.remove_prefix(1);
  std::int64_t minor = 0;
  int decimals = -1;  // -1 until the decimal sign
  int digits = 0;
  for (const char c : rest) {
    if (c == decimal_sign && decimals < 0) {
      decimals = 0;
    } else if (is_digit(c) && digits < 15) {
      ++digits;
      const bool surplus = decimals >= currency.decimals();
      if (surplus && c != '0') {
        return refuse(say("'{}' has more decimals than {} has; round it", text, currency.code));
      }
      if (!surplus) minor = minor * 10 + (c - '0');
      if (decimals >= 0 && !surplus) ++decimals;
    } else {
      return not_a_number();
    }
  }
  if (digits == 0) return not_a_number();
  minor *= power_of_ten(currency.decimals() - std::max(decimals, 0));
  return Money{negative ? -minor : minor, currency};
}

}  // namespace sparewell
