#include "exchange/x12/values.hpp"

#include <algorithm>

#include "exchange/cell.hpp"

namespace sparewell::exchange {
namespace {

bool has(const std::vector<std::string>& modifiers, std::string_view modifier) {
  return std::ranges::find(modifiers, modifier) != modifiers.end();
}

}  // namespace

std::optional<Date> x12_date(std::string_view text) {
  static const auto day = *DatePattern::from_text("YYYYMMDD");
  const auto cut = text.find('-');
  if (cut != std::string_view::npos && !day.parse(text.substr(cut + 1))) return std::nullopt;
  return day.parse(text.substr(0, cut));
}

std::optional<Money> x12_amount(std::string_view text, const Currency& currency) {
  constexpr std::int64_t most = 1'000'000'000'000;  // so that no sum of a file runs over
  const auto amount = parse_money(text, currency);
  if (!amount || amount->minor > most || amount->minor < -most) return std::nullopt;
  return *amount;
}

std::optional<int> x12_whole(std::string_view text) {
  int value = 0;
  const FolderFormat format;
  const Currency currency;
  if (!read_whole({text, format, currency}, value).empty()) return std::nullopt;
  return value;
}

std::optional<Side> X12Procedure::side() const {
  const bool right = has(modifiers, "RT");
  const bool left = has(modifiers, "LT");
  if (right == left) return std::nullopt;
  return right ? Side::right : Side::left;
}

X12Procedure x12_procedure(const X12Segment& segment, std::size_t element) {
  constexpr std::size_t first_modifier = 3;
  constexpr std::size_t last_modifier = 6;
  X12Procedure made{segment.part(element, 1), segment.part(element, 2), {}};
  for (std::size_t i = first_modifier; i <= last_modifier; ++i) {
    auto modifier = segment.part(element, i);
    if (!modifier.empty()) made.modifiers.push_back(std::move(modifier));
  }
  return made;
}

std::optional<Currency> x12_currency(const X12Segment& cur) {
  return parse_currency(cur.at(2));
}

Currency x12_currency_of(const X12File& file, const Currency& otherwise) {
  for (const auto& transaction : file.transactions) {
    for (const auto& segment : transaction.segments) {
      if (segment.id() != "CUR") continue;
      if (const auto found = x12_currency(segment)) return *found;
    }
  }
  return otherwise;
}

PersonClue x12_person(const X12Segment& nm1) {
  PersonClue made;
  made.family_name = nm1.at(3);
  made.given_name = nm1.at(4);
  made.member_id = nm1.at(9);
  return made;
}

bool is_plain(std::string_view text) {
  std::string checked;
  const FolderFormat format;
  const Currency currency;
  return read_name({text, format, currency}, checked).empty();
}

}  // namespace sparewell::exchange
