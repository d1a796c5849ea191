/// Values of X12 elements: dates, amounts, procedures, persons.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/date.hpp"
#include "clinic/money.hpp"
#include "clinic/words.hpp"
#include "exchange/claim_rows.hpp"
#include "exchange/x12/transactions.hpp"

namespace sparewell::exchange {

/// "20261125", the format D8; of a range "20261101-20261130" (RD8) the first day.
[[nodiscard]] std::optional<Date> x12_date(std::string_view text);

/// "1200", ".5" or "-12.5".
[[nodiscard]] std::optional<Money> x12_amount(std::string_view text, const Currency& currency);

/// Whole, "6" or "6.0"; nullopt for anything else.
[[nodiscard]] std::optional<int> x12_whole(std::string_view text);

/// The composite C003 of SV101, SVC01 and SVC06 (public segment reference: qualifier, code, up to four modifiers).
struct X12Procedure {
  std::string qualifier;  ///< "HC" for the US code set
  std::string code;
  std::vector<std::string> modifiers;

  /// By the modifier RT or LT; nothing for none or both.
  [[nodiscard]] std::optional<Side> side() const;
};
[[nodiscard]] X12Procedure x12_procedure(const X12Segment& segment, std::size_t element);

/// CUR02; nullopt when it is none.
[[nodiscard]] std::optional<Currency> x12_currency(const X12Segment& cur);
/// That of the first CUR segment, or `otherwise`.
[[nodiscard]] Currency x12_currency_of(const X12File& file, const Currency& otherwise);

/// NM103, NM104 and NM109.
[[nodiscard]] PersonClue x12_person(const X12Segment& nm1);

/// False for text that holds a control character or is too long for a name: it is not kept.
[[nodiscard]] bool is_plain(std::string_view text);

}  // namespace sparewell::exchange
