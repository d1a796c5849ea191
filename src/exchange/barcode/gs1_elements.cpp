#include "exchange/barcode/gs1_elements.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "exchange/barcode/check_digit.hpp"
#include "exchange/barcode/gs1_identifiers.hpp"
#include "exchange/text.hpp"

namespace sparewell::exchange {
namespace {

tl::unexpected<Refusal> refuse_unknown(std::string_view at) {
  return refuse(
      say("The barcode goes on with \"{}\", which begins with no identifier of the GS1 "
          "standard; scan it again, or enter the part by hand.",
          excerpt(at)));
}

tl::unexpected<Refusal> refuse_value(const Gs1Identifier& identifier, std::string_view fault) {
  return refuse(say("{} {}; scan or type it again.", identifier.words(), fault));
}

tl::unexpected<Refusal> refuse_missing_separator(const Gs1Identifier& identifier,
                                                 std::string_view value) {
  return refuse(
      say("{} is \"{}\", longer than the {} characters that it may have: the separator "
          "after it is missing; set the scanner to send FNC1 as GS (ASCII 29), or type the "
          "label's text with its parentheses.",
          identifier.words(), excerpt(value), identifier.most()));
}

/// Adds a field, unless it says the same as an earlier one of its kind.
Expected<void> add(std::vector<Element>& elements, const Gs1Identifier& identifier,
                   std::string_view value) {
  if (const auto fault = identifier.fault(value); !fault.empty()) {
    return refuse_value(identifier, fault);
  }
  const auto earlier = std::ranges::find(elements, identifier.code, &Element::identifier);
  if (earlier == elements.end()) {
    elements.push_back({std::string{identifier.code}, std::string{value}});
    return {};
  }
  if (earlier->value == value) return {};
  return refuse(
      say("{} stands on the label twice, as \"{}\" and as \"{}\"; look which one is right, "
          "and enter the part by hand.",
          identifier.words(), excerpt(earlier->value), excerpt(value)));
}

/// Cuts the first value off `text`, with the separator after it.
Expected<std::string_view> take_value(const Gs1Identifier& identifier, std::string_view& text) {
  const auto length = identifier.predefined_length();
  const auto end = std::min(text.find(group_separator), text.size());
  if (!length && end > identifier.most()) {
    return refuse_missing_separator(identifier, text.substr(0, end));
  }
  const auto value = text.substr(0, length ? std::min(*length, end) : end);
  text.remove_prefix(value.size());
  if (text.starts_with(group_separator)) text.remove_prefix(1);
  return value;
}

/// Where the next "(10)" begins at or after `from`; the text's size when there is none.
std::size_t find_parenthesis(std::string_view text, std::size_t from) {
  for (auto open = text.find('(', from); open != std::string_view::npos;
       open = text.find('(', open + 1)) {
    const auto close = text.find(')', open);
    if (close == std::string_view::npos) break;
    const auto code = text.substr(open + 1, close - open - 1);
    if (code.size() >= 2 && code.size() <= 4 && all_digits(code)) return open;
  }
  return text.size();
}

}  // namespace

Expected<std::vector<Element>> gs1_elements_scanned(std::string_view text) {
  std::vector<Element> elements;
  if (text.starts_with(group_separator)) text.remove_prefix(1);
  while (!text.empty()) {
    const auto identifier = gs1_identifier_at(text);
    if (!identifier) return refuse_unknown(text);
    text.remove_prefix(identifier->code.size());
    const auto value = take_value(*identifier, text);
    if (!value) return tl::unexpected(value.error());
    if (const auto added = add(elements, *identifier, *value); !added) {
      return tl::unexpected(added.error());
    }
  }
  return elements;
}

Expected<std::vector<Element>> gs1_elements_typed(std::string_view text) {
  std::vector<Element> elements;
  text = trimmed(text);
  while (!text.empty()) {
    const auto close = text.find(')');
    if (find_parenthesis(text, 0) != 0) return refuse_unknown(text);
    const auto code = text.substr(1, close - 1);
    const auto identifier = gs1_identifier_at(code);
    if (!identifier || identifier->code.size() != code.size()) return refuse_unknown(text);
    const auto end = find_parenthesis(text, close);
    const auto value = trimmed(text.substr(close + 1, end - close - 1));
    if (const auto added = add(elements, *identifier, value); !added) {
      return tl::unexpected(added.error());
    }
    text.remove_prefix(end);
  }
  return elements;
}

}  // namespace sparewell::exchange
