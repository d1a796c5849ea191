/// Payments of payers as a file gives them, before it is known whose their lines are.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "clinic/remittance.hpp"
#include "exchange/claim_rows.hpp"

namespace sparewell::exchange {

/// One line of a payment, and whose it is as far as the file says.
struct PaidRow {
  int at = 0;           ///< the segment, or the line of a table
  RemittanceLine line;  ///< without patient
  PersonClue person;
};

/// One payment: of X12 one transaction.
struct PaymentRead {
  int at = 0;
  Remittance remittance;  ///< without `source`
  std::vector<PaidRow> lines;
  Money summed;  ///< what the lines pay together
  /// Why it cannot be kept as a whole: without payer, reference or day; "" when it can.
  std::string fault;
};

/// A row of a table that could not be read.
struct RefusedPaidRow {
  int at = 0;
  Fault fault;
  std::map<std::string, std::string> cells;  ///< by our fields, as they were
};

/// A line that was read, as a row that is refused with its payment.
[[nodiscard]] RefusedPaidRow refused_row(const PaidRow& row, const Remittance& remittance,
                                         const Fault& fault);

/// The group and reason of a sum that the file does not explain.
inline constexpr std::string_view unstated_group = "OA";
inline constexpr std::string_view unstated_reason = "unstated";

/// An entry with its adjustments as amounts.
struct PaidEntry {
  PaidRow row;
  std::vector<Adjustment> adjustments;

  /// charge - adjustments - paid: 0 when it balances.
  [[nodiscard]] std::int64_t open() const;
  /// Adds what is open as an adjustment without a reason, and writes the adjustments into the line.
  [[nodiscard]] PaidRow balanced() const;
};

}  // namespace sparewell::exchange
