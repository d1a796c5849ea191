#include "exchange/text.hpp"

#include <algorithm>

#include "clinic/say.hpp"

namespace sparewell::exchange {
namespace {

constexpr std::string_view no_break_space = "\xC2\xA0";

bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

bool continues_character(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  while (!text.empty()) {
    if (is_blank(text.front())) {
      text.remove_prefix(1);
    } else if (text.starts_with(no_break_space)) {
      text.remove_prefix(no_break_space.size());
    } else {
      break;
    }
  }
  while (!text.empty()) {
    if (is_blank(text.back())) {
      text.remove_suffix(1);
    } else if (text.ends_with(no_break_space)) {
      text.remove_suffix(no_break_space.size());
    } else {
      break;
    }
  }
  return text;
}

std::string lower_case(std::string_view text) {
  std::string lower{text};
  std::ranges::transform(lower, lower.begin(), [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  });
  return lower;
}

std::string excerpt(std::string_view text) {
  constexpr std::size_t most = 40;
  std::string shown{text.substr(0, most)};
  if (text.size() > most) {
    while (!shown.empty() && continues_character(text[shown.size()])) shown.pop_back();
    shown += "...";
  }
  std::ranges::replace_if(
      shown, [](char c) { return static_cast<unsigned char>(c) < 0x20U; }, ' ');
  return shown;
}

std::string separator_name(char separator) {
  switch (separator) {
    case ',':
      return said("a comma");
    case ';':
      return said("a semicolon");
    case '\t':
      return said("a tab");
    default:
      return std::string{"'"} + separator + "'";
  }
}

}  // namespace sparewell::exchange
