#include "exchange/barcode/gs1_label.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "exchange/barcode/check_digit.hpp"
#include "exchange/barcode/gs1_identifiers.hpp"
#include "exchange/barcode/short_date.hpp"

namespace sparewell::exchange {
namespace {

constexpr auto date_codes =
    std::to_array<std::string_view>({"11", "12", "13", "15", "16", "17", "7003", "8008"});

/// The value of an identifier; "" when the label does not have it.
std::string_view value_of(const std::vector<Element>& elements, std::string_view code) {
  const auto found = std::ranges::find(elements, code, &Element::identifier);
  return found == elements.end() ? std::string_view{} : found->value;
}

/// A date without the hours and minutes that may follow it.
std::optional<Date> date_of(std::string_view value, Date today) {
  return date_in_digits(value.substr(0, 6), "YYMMdd", today);
}

Expected<void> check_dates(const std::vector<Element>& elements, Date today) {
  for (const Element& element : elements) {
    if (std::ranges::find(date_codes, element.identifier) == date_codes.end()) continue;
    if (date_of(element.value, today)) continue;
    return refuse(say("{} is {}, which is no day of the calendar; scan or type it again.",
                      gs1_identifier_at(element.identifier)->words(), element.value));
  }
  return {};
}

/// The item's number, wherever it stands.
Expected<std::string> item_number(const std::vector<Element>& elements) {
  std::string found;
  for (const auto code : {"01", "02", "8006"}) {
    const std::string number{value_of(elements, code).substr(0, 14)};
    if (number.empty()) continue;
    if (!found.empty() && found != number) {
      return refuse(
          say("The label names two items, {} and {}; scan the label of one package, or "
              "enter the part by hand.",
              found, number));
    }
    found = number;
  }
  return found;
}

/// The pieces, when the label says them as the standard allows.
std::optional<int> pieces(const std::vector<Element>& elements) {
  const auto count = value_of(elements, "30");
  const auto content = value_of(elements, "37");
  const auto text = count.empty() ? content : count;
  if (text.empty()) return std::nullopt;
  int number = 0;
  for (const char digit : text) number = number * 10 + (digit - '0');
  return number;
}

bool begins_field(std::string_view text) {
  return text.empty() ||
         std::ranges::any_of(std::to_array<std::string_view>({"10", "11", "17", "21", "30"}),
                             [&](auto code) { return text.starts_with(code); });
}

/// True when a date field seems to stand inside a value: the separator before it may be lost.
bool may_hold_date(std::string_view value, std::string_view code, Date today) {
  constexpr std::size_t length = 8;
  for (std::size_t at = 1; at + length <= value.size(); ++at) {
    if (value.substr(at, 2) != code || !begins_field(value.substr(at + length))) continue;
    const auto date = date_of(value.substr(at + 2, 6), today);
    if (date && *date > today - days{3653} && *date < today + days{3653}) return true;
  }
  return false;
}

std::string lost_separator_doubt(const std::vector<Element>& elements, Date today) {
  for (const auto code : {"10", "21"}) {
    const auto value = value_of(elements, code);
    for (const auto date_code : {"17", "11"}) {
      if (!value_of(elements, date_code).empty() || !may_hold_date(value, date_code, today)) {
        continue;
      }
      return say(
          "{} was read as \"{}\", which may hold {} because a separator got lost: compare it with "
          "the label.",
          gs1_identifier_at(code)->words(), value, gs1_identifier_at(date_code)->words());
    }
  }
  return {};
}

}  // namespace

Expected<std::string> gtin_of_digits(std::string_view digits) {
  if (!has_gs1_check_digit(digits)) {
    return refuse(
        say("{} has the check digit {}, but {} was expected; scan or type it "
            "again.",
            digits, digits.back(), gs1_check_digit(digits.substr(0, digits.size() - 1))));
  }
  return fmt::format("{:0>14}", digits);
}

Expected<Label> gs1_label(std::vector<Element> elements, Separation separation, Date today) {
  if (const auto checked = check_dates(elements, today); !checked) {
    return tl::unexpected(checked.error());
  }
  auto gtin = item_number(elements);
  if (!gtin) return tl::unexpected(gtin.error());
  Label label;
  label.gtin = std::move(*gtin);
  label.lot = value_of(elements, "10");
  label.serial = value_of(elements, "21");
  auto use_by = value_of(elements, "17");
  if (use_by.empty()) use_by = value_of(elements, "7003");
  label.use_by = date_of(use_by, today);
  label.made_on = date_of(value_of(elements, "11"), today);
  label.quantity = pieces(elements);
  if (separation == Separation::by_scanner) label.doubt = lost_separator_doubt(elements, today);
  if (!value_of(elements, "01").empty() && !value_of(elements, "37").empty()) {
    label.quantity.reset();
    if (label.doubt.empty())
      label.doubt = said(
          "The label gives a count (37) beside the item number of a single package (01), which the "
          "standard does not allow: count the pieces.");
  }
  label.elements = std::move(elements);
  return label;
}

}  // namespace sparewell::exchange
