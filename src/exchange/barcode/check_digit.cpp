#include "exchange/barcode/check_digit.hpp"

#include <algorithm>

namespace sparewell::exchange {

bool all_digits(std::string_view text) {
  return !text.empty() && std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

char gs1_check_digit(std::string_view digits) {
  int sum = 0;
  int weight = 3;
  for (auto digit = digits.rbegin(); digit != digits.rend(); ++digit) {
    sum += weight * (*digit - '0');
    weight = 4 - weight;
  }
  return static_cast<char>('0' + (10 - sum % 10) % 10);
}

bool has_gs1_check_digit(std::string_view digits) {
  return !digits.empty() && gs1_check_digit(digits.substr(0, digits.size() - 1)) == digits.back();
}

std::optional<char> hibc_check_character(std::string_view text) {
  static constexpr std::string_view values = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-. $/+%";
  std::size_t sum = 0;
  for (const char c : text) {
    const auto value = values.find(c);
    if (value == std::string_view::npos) return std::nullopt;
    sum += value;
  }
  return values[sum % values.size()];
}

}  // namespace sparewell::exchange
