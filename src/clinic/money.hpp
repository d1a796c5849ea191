/// Money as a whole number of the currency's smallest unit; amounts of two currencies never mix.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "clinic/refusal.hpp"

namespace sparewell {

/// An ISO 4217 code of three capital letters, for example "EUR".
struct Currency {
  std::string code = "USD";

  friend auto operator<=>(const Currency&, const Currency&) = default;
  /// Digits after the decimal sign: 2 for most, 0 for example for JPY, 3 for KWD (ISO 4217 table).
  [[nodiscard]] int decimals() const;
};

/// Accepts three letters, in either case.
[[nodiscard]] std::optional<Currency> parse_currency(std::string_view text);

struct Money {
  std::int64_t minor = 0;  ///< in the currency's smallest unit: cents for EUR and USD
  Currency currency;

  friend auto operator<=>(const Money&, const Money&) = default;
  /// The amount in whole currency units, for cells and charts only; never add these.
  [[nodiscard]] double major() const;
};

/// Adds two amounts. Throws std::logic_error when the currencies differ.
[[nodiscard]] Money operator+(const Money& a, const Money& b);
[[nodiscard]] Money operator*(const Money& each, std::int64_t quantity);

/// "1234.50" without the currency code.
[[nodiscard]] std::string plain_text(const Money& money);
/// "1234.50 EUR".
[[nodiscard]] std::string text(const Money& money);

/// Reads a plain decimal number such as "1234.5"; `decimal_sign` is '.' or ','. No thousands
/// separators. Refuses more decimals than the currency has, naming the reason.
[[nodiscard]] Expected<Money> parse_money(std::string_view text, const Currency& currency,
                                          char decimal_sign = '.');

}  // namespace sparewell
