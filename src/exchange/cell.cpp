#include "exchange/cell.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <optional>

#include "clinic/say.hpp"
#include "exchange/barcode/check_digit.hpp"

namespace sparewell::exchange {
namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool is_control(char c) {
  return static_cast<unsigned char>(c) < 0x20U || c == '\x7F';
}

bool is_text_layout(char c) {
  return c == '\n' || c == '\r' || c == '\t';
}

Reason not_a_number(const Cell& cell, std::string_view what) {
  const char other = cell.format.decimal_sign == '.' ? ',' : '.';
  if (std::ranges::count(cell.text, other) == 1 && std::ranges::all_of(cell.text, [&](char c) {
        return is_digit(c) || c == other || c == '-';
      })) {
    return say(
        "'{}' has '{}' where the decimal sign is '{}'; correct it, or declare the "
        "decimal sign '{}' for the folder",
        excerpt(cell.text), other, cell.format.decimal_sign, other);
  }
  return say("'{}' is not {}; write digits only, with '{}' before any decimals", excerpt(cell.text),
             what, cell.format.decimal_sign);
}

/// Digits with an optional sign and decimals; no exponent, no thousands separators.
std::optional<double> plain_number(const Cell& cell) {
  std::string text{cell.text};
  const auto plain = [&](char c) { return is_digit(c) || c == cell.format.decimal_sign; };
  const std::size_t sign = text.starts_with('-') || text.starts_with('+') ? 1 : 0;
  const auto body = std::string_view{text}.substr(sign);
  if (body.empty() || !std::ranges::all_of(body, plain)) return std::nullopt;
  if (std::ranges::count(body, cell.format.decimal_sign) > 1) return std::nullopt;
  if (!std::ranges::any_of(body, is_digit)) return std::nullopt;
  std::ranges::replace(text, cell.format.decimal_sign, '.');
  if (text.starts_with('+')) text.erase(0, 1);
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value + 0.0;  // no negative zero
}

/// Calls `take` with each part between semicolons, without the spaces around it.
template <class Take>
void for_each_part(std::string_view text, Take take) {
  while (true) {
    const std::size_t cut = text.find(';');
    const auto part = trimmed(text.substr(0, cut));
    if (!part.empty()) take(part);
    if (cut == std::string_view::npos) return;
    text.remove_prefix(cut + 1);
  }
}

}  // namespace

Reason read_text(const Cell& cell, std::string& into) {
  constexpr std::size_t most = 1000;
  if (cell.text.size() > most) {
    return say("is longer than {} bytes; shorten it, or look for a missing quotation mark", most);
  }
  if (std::ranges::any_of(cell.text, [](char c) { return is_control(c) && !is_text_layout(c); })) {
    return said("holds a control character; remove it");
  }
  into = cell.text;
  return {};
}

Reason read_name(const Cell& cell, std::string& into) {
  if (std::ranges::any_of(cell.text, is_text_layout)) {
    return say("'{}' holds a line break or a tab; remove it", excerpt(cell.text));
  }
  return read_text(cell, into);
}

Reason read_words(const Cell& cell, std::string& into) {
  std::string one_line;
  for (std::size_t at = 0; at < cell.text.size(); ++at) {
    if (!is_text_layout(cell.text[at])) {
      one_line += cell.text[at];
      continue;
    }
    while (one_line.ends_with(' ')) one_line.pop_back();
    one_line += ' ';
    while (at + 1 < cell.text.size() &&
           (cell.text[at + 1] == ' ' || is_text_layout(cell.text[at + 1]))) {
      ++at;
    }
  }
  return read_text(Cell{one_line, cell.format, cell.currency}, into);
}

Reason read_date(const Cell& cell, Date& into) {
  const auto date = cell.format.dates.parse(cell.text);
  if (!date) {
    return say(
        "'{}' is not a date from 1900 to 2199 written {}; correct it, or declare how "
        "the folder writes dates",
        excerpt(cell.text), cell.format.dates.text());
  }
  into = *date;
  return {};
}

Reason read_number(const Cell& cell, double& into) {
  const auto value = plain_number(cell);
  if (!value) return not_a_number(cell, said("a number"));
  into = *value;
  return {};
}

Reason read_whole(const Cell& cell, int& into) {
  const auto value = plain_number(cell);
  if (!value) return not_a_number(cell, said("a whole number"));
  if (std::floor(*value) != *value) {
    return say("'{}' is not a whole number; correct it", excerpt(cell.text));
  }
  if (std::abs(*value) > std::numeric_limits<int>::max()) {
    return say("'{}' is too large; correct it", excerpt(cell.text));
  }
  into = static_cast<int>(*value);
  return {};
}

Reason read_yes_no(const Cell& cell, bool& into) {
  static constexpr std::array<std::string_view, 4> yes{"yes", "true", "y", "1"};
  static constexpr std::array<std::string_view, 4> no{"no", "false", "n", "0"};
  const auto is_text = [&](std::string_view word) { return same_word(word, cell.text); };
  into = std::ranges::any_of(yes, is_text);
  if (into || std::ranges::any_of(no, is_text)) return {};
  return say("'{}' is neither yes nor no; write yes or no", excerpt(cell.text));
}

Reason read_list(const Cell& cell, std::vector<std::string>& into) {
  Reason reason;
  into.clear();
  for_each_part(cell.text, [&](std::string_view part) {
    std::string name;
    if (reason.empty()) reason = read_name(Cell{part, cell.format, cell.currency}, name);
    into.push_back(std::move(name));
  });
  return reason;
}

Reason read_signed_money(const Cell& cell, Money& into) {
  const auto amount = parse_money(cell.text, cell.currency, cell.format.decimal_sign);
  if (!amount) {
    const auto plain = plain_number(cell);
    return plain ? amount.error().sentence : not_a_number(cell, said("an amount"));
  }
  into = *amount;
  return {};
}

Reason read_money(const Cell& cell, Money& into) {
  auto reason = read_signed_money(cell, into);
  if (reason.empty() && into.minor < 0) {
    reason = say("'{}' is below zero; write an amount of 0 or more", excerpt(cell.text));
  }
  return reason;
}

Reason read_currency(const Cell& cell, Currency& into) {
  const auto currency = parse_currency(cell.text);
  if (!currency) {
    return say("'{}' is not a currency code of three letters, such as EUR; correct it",
               excerpt(cell.text));
  }
  into = *currency;
  return {};
}

Reason read_order_days(const Cell& cell, OrderDays& into) {
  const auto order_days = parse_order_days(cell.text);
  if (!order_days) {
    return say(
        "'{}' names no order days; write weekdays such as Mon;Thu, or one number "
        "above 7 for every so many days",
        excerpt(cell.text));
  }
  into = *order_days;
  return {};
}

Reason read_price_breaks(const Cell& cell, std::vector<PriceBreak>& into) {
  Reason reason;
  into.clear();
  for_each_part(cell.text, [&](std::string_view part) {
    if (!reason.empty()) return;
    const std::size_t colon = part.find(':');
    PriceBreak step;
    if (colon == std::string_view::npos) {
      reason = say("'{}' is not a price break; write quantity:cost, such as 10:4{}50",
                   excerpt(part), cell.format.decimal_sign);
      return;
    }
    reason = read_whole({trimmed(part.substr(0, colon)), cell.format, cell.currency},
                        step.from_quantity);
    if (reason.empty()) {
      reason =
          read_money({trimmed(part.substr(colon + 1)), cell.format, cell.currency}, step.unit_cost);
    }
    if (reason.empty() && step.from_quantity < 1) {
      reason = say("'{}' begins below 1 piece; correct the quantity", excerpt(part));
    }
    if (reason.empty() && !into.empty() && into.back().from_quantity >= step.from_quantity) {
      reason =
          say("'{}' does not begin above the price break before it; order them by "
              "rising quantity",
              excerpt(part));
    }
    into.push_back(step);
  });
  return reason;
}

std::function<Reason(const Cell&, double&)> number_between(double least, double most,
                                                           std::string what) {
  return [=, what = std::move(what)](const Cell& cell, double& into) -> Reason {
    auto reason = read_number(cell, into);
    if (reason.empty() && !(into >= least && into <= most)) {
      reason = say("'{}' is outside what is possible ({}); correct it", excerpt(cell.text),
                   said(what.c_str()));
    }
    return reason;
  };
}

std::function<Reason(const Cell&, int&)> whole_between(int least, int most, std::string what) {
  return [=, what = std::move(what)](const Cell& cell, int& into) -> Reason {
    auto reason = read_whole(cell, into);
    if (reason.empty() && (into < least || into > most)) {
      reason = say("'{}' is outside what is possible ({}); correct it", excerpt(cell.text),
                   said(what.c_str()));
    }
    return reason;
  };
}

std::string gtin_doubt(std::string_view gtin) {
  if (!std::ranges::all_of(gtin, is_digit)) {
    return said("is not all digits; a spreadsheet may have rounded it");
  }
  static constexpr std::array<std::size_t, 4> lengths{8, 12, 13, 14};
  if (std::ranges::find(lengths, gtin.size()) == lengths.end()) {
    return said("does not have 8, 12, 13 or 14 digits; leading zeros may be lost");
  }
  return has_gs1_check_digit(gtin)
             ? ""
             : said("has a check digit that does not fit; a digit may be wrong");
}

}  // namespace sparewell::exchange
