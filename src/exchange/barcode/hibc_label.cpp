#include "exchange/barcode/hibc_label.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "exchange/barcode/check_digit.hpp"
#include "exchange/barcode/short_date.hpp"
#include "exchange/text.hpp"

namespace sparewell::exchange {
namespace {

bool is_capital(char c) {
  return c >= 'A' && c <= 'Z';
}

bool all_letters_and_digits(std::string_view text) {
  return std::ranges::all_of(text, [](char c) { return is_capital(c) || (c >= '0' && c <= '9'); });
}

int number_of(std::string_view digits) {
  int number = 0;
  for (const char digit : digits) number = number * 10 + (digit - '0');
  return number;
}

tl::unexpected<Refusal> refuse_part(std::string_view part, std::string_view why) {
  return refuse(
      say("The HIBC barcode's part \"{}\" {}; scan it again, or enter the part "
          "by hand.",
          excerpt(part), why));
}

/// Fills a label from the parts of one symbol.
class HibcParts {
 public:
  explicit HibcParts(Date today) : today_{today} {}

  Expected<void> take_item(std::string_view part);
  Expected<void> take(std::string_view part);
  Label label;

 private:
  Expected<void> take_flagged(std::string_view part);
  Expected<void> take_rest(std::string_view part, std::string_view rest, bool is_serial);
  template <class Field, class Value>
  Expected<void> set(std::string_view part, Field& field, Value value);

  Date today_;
};

/// LIC (a letter and three more), product or catalogue number, and one digit.
Expected<void> HibcParts::take_item(std::string_view part) {
  constexpr std::size_t maker_length = 4;
  constexpr std::size_t product_most = 18;
  if (!all_letters_and_digits(part) || part.size() < maker_length + 2 ||
      part.size() > maker_length + product_most + 1 || !all_digits(part.substr(part.size() - 1))) {
    return refuse_part(part, said("is not a maker, a product number and a unit of measure"));
  }
  label.maker = part.substr(0, maker_length);
  label.product = part.substr(maker_length, part.size() - maker_length - 1);
  label.package_level = part.back() - '0';
  label.elements.push_back({"", std::string{part}});
  return {};
}

template <class Field, class Value>
Expected<void> HibcParts::set(std::string_view part, Field& field, Value value) {
  if (field != Field{} && field != Field{value}) {
    return refuse_part(part, said("contradicts what stands before it"));
  }
  field = Field{value};
  return {};
}

Expected<void> HibcParts::take(std::string_view part) {
  if (part.empty()) return refuse_part(part, said("is empty"));
  const auto keep = [&](std::string_view identifier) {
    const auto value = part.substr(identifier.size());
    label.elements.push_back({std::string{identifier}, std::string{value}});
    return value;
  };
  for (const auto identifier : {"14D", "16D"}) {
    if (!part.starts_with(identifier)) continue;
    const auto date = date_in_digits(part.substr(3), "YYYYMMDD", today_);
    if (!date) break;  // digits of the oldest form, or nothing that can be read
    keep(identifier);
    return set(part, part.starts_with("14D") ? label.use_by : label.made_on, *date);
  }
  if (part.front() == '$') return take_flagged(part);
  if (part.front() == 'S') return set(part, label.serial, std::string{keep("S")});
  if (part.front() == 'Q' && part.size() <= 6 && all_digits(part.substr(1))) {
    return set(part, label.quantity, number_of(keep("Q")));
  }
  if (all_digits(part.substr(0, 1)) && part.size() >= 5 && all_digits(part.substr(0, 5))) {
    const auto date = date_in_digits(part.substr(0, 5), "YYJJJ", today_);
    if (!date) return refuse_part(part, said("begins with no day of the calendar"));
    keep("");
    if (const auto done = set(part, label.use_by, *date); !done) return done;
    return part.size() == 5 ? Expected<void>{} : set(part, label.lot, std::string{part.substr(5)});
  }
  if (!is_capital(part.front()) && !all_digits(part.substr(0, 1))) {
    return refuse_part(part, said("begins with no known sign"));
  }
  if (part.starts_with("14D") || part.starts_with("16D") || part.starts_with("Q")) {
    return refuse_part(part, said("holds no date or number that can be read"));
  }
  keep("");
  return {};
}

/// `$`, `$+`, `$$`, `$$+` with or without a quantity.
Expected<void> HibcParts::take_flagged(std::string_view part) {
  const bool has_date = part.starts_with("$$");
  auto rest = part.substr(has_date ? 2 : 1);
  const bool is_serial = rest.starts_with('+');
  if (is_serial) rest.remove_prefix(1);
  label.elements.push_back(
      {std::string{part.substr(0, part.size() - rest.size())}, std::string{rest}});
  if (!has_date) {
    if (rest.empty()) return refuse_part(part, said("is empty"));
    return is_serial ? set(part, label.serial, std::string{rest})
                     : set(part, label.lot, std::string{rest});
  }
  const bool has_quantity = !is_serial && (rest.starts_with('8') || rest.starts_with('9'));
  if (!has_quantity) return take_rest(part, rest, is_serial);
  const std::size_t digits = rest.front() == '8' ? 2 : 5;
  const auto quantity = rest.substr(1, digits);
  if (quantity.size() < digits || !all_digits(quantity)) {
    return refuse_part(part, said("holds no quantity that can be read"));
  }
  if (const auto done = set(part, label.quantity, number_of(quantity)); !done) return done;
  rest.remove_prefix(1 + digits);
  // Published examples give a lot at once after a quantity, without the sign for "no date".
  const bool dated = (rest.size() >= 4 && date_in_digits(rest.substr(0, 4), "MMYY", today_)) ||
                     (!rest.empty() && rest.front() >= '2' && rest.front() <= '7');
  if (dated) return take_rest(part, rest, is_serial);
  return rest.empty() ? Expected<void>{} : set(part, label.lot, std::string{rest});
}

/// A date, or the sign for none, and then the lot or the serial number.
Expected<void> HibcParts::take_rest(std::string_view part, std::string_view rest, bool is_serial) {
  struct Form {
    char sign;
    std::string_view pattern;
  };
  static constexpr auto forms = std::to_array<Form>({{'2', "MMDDYY"},
                                                     {'3', "YYMMDD"},
                                                     {'4', "YYMMDDHH"},
                                                     {'5', "YYJJJ"},
                                                     {'6', "YYJJJHH"},
                                                     {'7', ""}});
  std::string_view pattern = "MMYY";
  const auto form = std::ranges::find(forms, rest.empty() ? '\0' : rest.front(), &Form::sign);
  if (form != forms.end()) {
    pattern = form->pattern;
    rest.remove_prefix(1);
  }
  if (!pattern.empty()) {
    const auto date = date_in_digits(rest.substr(0, pattern.size()), pattern, today_);
    if (!date) return refuse_part(part, said("holds no date that can be read"));
    if (const auto done = set(part, label.use_by, *date); !done) return done;
    rest.remove_prefix(pattern.size());
  }
  if (rest.empty()) return {};
  return is_serial ? set(part, label.serial, std::string{rest})
                   : set(part, label.lot, std::string{rest});
}

Expected<void> take_parts(HibcParts& parts, std::string_view text) {
  while (true) {
    const auto end = std::min(text.find('/'), text.size());
    if (const auto done = parts.take(text.substr(0, end)); !done) return done;
    if (end == text.size()) return {};
    text.remove_prefix(end + 1);
  }
}

char from_paper(char c) {
  return c == '_' ? ' ' : c;
}

std::string shown(char c) {
  return c == ' ' ? said("a blank") : fmt::format("'{}'", c);
}

}  // namespace

Expected<HibcSymbol> read_hibc(std::string_view text, Date today) {
  if (text.size() < 4) return refuse_part(text, said("is too short"));
  const auto checked = text.substr(0, text.size() - 1);
  std::string body{checked};
  const bool names_item = is_capital(text[1]);
  if (!names_item) body.back() = from_paper(body.back());
  HibcSymbol symbol;
  symbol.check = from_paper(text.back());
  const auto expected = hibc_check_character(body);
  if (!expected) return refuse_part(text, said("holds a character that HIBC does not have"));
  if (*expected != symbol.check) {
    return refuse(
        say("The HIBC barcode \"{}\" has the check character {}, but {} was "
            "expected; scan or type it again.",
            excerpt(text), shown(symbol.check), shown(*expected)));
  }
  body.erase(0, 1);
  HibcParts parts{today};
  std::string_view rest = body;
  if (names_item) {
    const auto end = std::min(rest.find('/'), rest.size());
    if (const auto done = parts.take_item(rest.substr(0, end)); !done) {
      return tl::unexpected(done.error());
    }
    rest.remove_prefix(end);
    if (rest.starts_with('/')) rest.remove_prefix(1);
    if (end == body.size()) {
      symbol.label = std::move(parts.label);
      return symbol;
    }
  } else {
    symbol.link = rest.back();
    rest.remove_suffix(1);
  }
  if (const auto done = take_parts(parts, rest); !done) return tl::unexpected(done.error());
  symbol.label = std::move(parts.label);
  return symbol;
}

Expected<Label> join_hibc(const HibcSymbol& first, const HibcSymbol& second) {
  if (second.link != first.check) {
    return refuse(
        say("The second HIBC barcode belongs to another package: its link "
            "character is {}, but the first barcode's check character is {}; "
            "scan both barcodes of one package.",
            shown(second.link), shown(first.check)));
  }
  Label joined = second.label;
  joined.maker = first.label.maker;
  joined.product = first.label.product;
  joined.package_level = first.label.package_level;
  joined.elements = first.label.elements;
  joined.elements.insert(joined.elements.end(), second.label.elements.begin(),
                         second.label.elements.end());
  return joined;
}

}  // namespace sparewell::exchange
