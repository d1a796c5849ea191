#include "exchange/sheet/sheet_values.hpp"

#include <cmath>
#include <limits>

#include "clinic/say.hpp"

namespace sparewell::exchange {
namespace {

Reason error_in(const SheetCell& cell) {
  return say("'{}' could not be calculated there; correct it", excerpt(cell.text));
}

}  // namespace

std::string_view sheet_text(const SheetCell& cell) {
  if (cell.kind == SheetCell::Kind::error) return {};
  return trimmed(cell.text);
}

Reason read_sheet_money(const SheetCell& cell, const FolderFormat& format, const Currency& currency,
                        Money& into) {
  constexpr double most = 1e12;
  constexpr double least_surplus = 1e-4;  // of the smallest unit; less is the number's own error
  if (cell.kind == SheetCell::Kind::error) return error_in(cell);
  const auto text = trimmed(cell.text);
  if (cell.kind != SheetCell::Kind::number) {
    if (cell.kind == SheetCell::Kind::date) {
      return say("'{}' is a date, not an amount; correct it", text);
    }
    return read_signed_money({text, format, currency}, into);
  }
  const double minor = cell.number * std::pow(10, currency.decimals());
  if (!(std::abs(minor) <= most)) return say("'{}' is too large; correct it", text);
  if (std::abs(minor - std::round(minor)) > least_surplus) {
    return say("'{}' has more decimals than {} has; correct it", text, currency.code);
  }
  into = {std::llround(minor), currency};
  return {};
}

Reason read_sheet_whole(const SheetCell& cell, const FolderFormat& format, int& into) {
  if (cell.kind == SheetCell::Kind::error) return error_in(cell);
  const auto text = trimmed(cell.text);
  if (cell.kind != SheetCell::Kind::number) return read_whole({text, format, Currency{}}, into);
  if (std::floor(cell.number) != cell.number ||
      std::abs(cell.number) > std::numeric_limits<int>::max()) {
    return say("'{}' is not a whole number; correct it", excerpt(text));
  }
  into = static_cast<int>(cell.number);
  return {};
}

Reason read_sheet_date(const SheetCell& cell, const FolderFormat& format, Date& into) {
  if (cell.kind == SheetCell::Kind::error) return error_in(cell);
  if (cell.kind != SheetCell::Kind::date) return read_date({trimmed(cell.text), format, {}}, into);
  into = cell.date;
  return {};
}

}  // namespace sparewell::exchange
