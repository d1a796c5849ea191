#include "store/sqlite/fields.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "store/port.hpp"

namespace sparewell::store::sqlite {
namespace {

constexpr char between_texts = ';';

[[noreturn]] void refuse_value(std::string_view column, std::string_view why) {
  throw StoreFailure{StoreError::constraint, say("The value of {} {}.", column, why)};
}

}  // namespace

int Binder::parameter(std::string_view column) {
  name_.assign(1, ':').append(column);
  return statement_->getIndex(name_.c_str());
}

void Binder::row(std::string_view column, std::int64_t id) {
  statement_->bind(parameter(column), id);
}

void Binder::nothing(std::string_view column) {
  statement_->bind(parameter(column));
}

void Binder::operator()(std::string_view column, const std::string& text) {
  statement_->bind(parameter(column), text);
}

void Binder::operator()(std::string_view column, int number) {
  statement_->bind(parameter(column), number);
}

void Binder::operator()(std::string_view column, unsigned number) {
  statement_->bind(parameter(column), number);
}

void Binder::operator()(std::string_view column, bool truth) {
  statement_->bind(parameter(column), truth ? 1 : 0);
}

void Binder::operator()(std::string_view column, double number) {
  // The library would store a NaN as NULL, which means "not recorded".
  if (!std::isfinite(number)) refuse_value(column, said("is not a number"));
  statement_->bind(parameter(column), number);
}

void Binder::operator()(std::string_view column, Date date) {
  static const Date first = make_date(1900, 1, 1);
  static const Date last = make_date(2199, 12, 31);
  if (date < first || date > last) refuse_value(column, said("is not between 1900 and 2199"));
  (*this)(column, iso_text(date));
}

void Binder::operator()(std::string_view column, const Currency& currency) {
  (*this)(column, currency.code);
}

void Binder::operator()(std::string_view column, const std::vector<std::string>& texts) {
  for (const auto& text : texts) {
    if (text.empty() || text.find(between_texts) != std::string::npos) {
      refuse_value(column, said("has a part that is empty or holds a semicolon"));
    }
  }
  (*this)(column, fmt::format("{}", fmt::join(texts, std::string_view{&between_texts, 1})));
}

void Binder::operator()(std::string_view column, const std::optional<Money>& money) {
  const auto minor = fmt::format("{}_minor", column);
  const auto currency = fmt::format("{}_currency", column);
  if (!money) {
    nothing(minor);
    nothing(currency);
    return;
  }
  row(minor, money->minor);
  (*this)(currency, money->currency);
}

bool Reader::skip_null() {
  if (!statement_->isColumnNull(next_)) return false;
  ++next_;
  return true;
}

std::string Reader::take_text() {
  return statement_->getColumn(next_++).getString();
}

std::int64_t Reader::take_number() {
  return statement_->getColumn(next_++).getInt64();
}

void Reader::unreadable(std::string_view column, std::string_view text) {
  throw StoreFailure{StoreError::corrupt,
                     say("The clinic file holds \"{}\" as {}, which this program cannot "
                         "read; restore the last backup.",
                         text, column)};
}

template <class Whole>
Whole Reader::take_whole(std::string_view column) {
  const auto stored = take_number();
  if (!std::in_range<Whole>(stored)) unreadable(column, std::to_string(stored));
  return static_cast<Whole>(stored);
}

void Reader::operator()(std::string_view, std::string& text) {
  text = take_text();
}

void Reader::operator()(std::string_view column, int& number) {
  number = take_whole<int>(column);
}

void Reader::operator()(std::string_view column, unsigned& number) {
  number = take_whole<unsigned>(column);
}

void Reader::operator()(std::string_view, bool& truth) {
  truth = take_number() != 0;
}

void Reader::operator()(std::string_view, double& number) {
  number = statement_->getColumn(next_++).getDouble();
}

void Reader::operator()(std::string_view column, Date& date) {
  const auto text = take_text();
  const auto parsed = parse_iso_date(text);
  if (!parsed) unreadable(column, text);
  date = *parsed;
}

void Reader::operator()(std::string_view, Currency& currency) {
  currency.code = take_text();
}

void Reader::operator()(std::string_view, std::vector<std::string>& texts) {
  const auto joined = take_text();
  texts.clear();
  for (auto begin = joined.begin(); begin != joined.end();) {
    const auto end = std::find(begin, joined.end(), between_texts);
    texts.emplace_back(begin, end);
    begin = end == joined.end() ? end : end + 1;
  }
}

void Reader::operator()(std::string_view column, std::optional<Money>& money) {
  if (skip_null()) {
    ++next_;
    return;
  }
  auto& stored = money.emplace();
  stored.minor = take_number();
  (*this)(column, stored.currency);
}

void Reader::operator()(std::string_view column, Money& money) {
  std::optional<Money> read;
  (*this)(column, read);
  if (!read) unreadable(column, "");
  money = *read;
}

nlohmann::ordered_json JsonWriter::json(const Money& money) {
  return {{"minor", money.minor}, {"currency", money.currency.code}};
}

}  // namespace sparewell::store::sqlite
