/// Reads payments of payers with their explanation, X12 835 (005010X221A1).
#pragma once

#include <string>
#include <vector>

#include "clinic/remittance.hpp"
#include "exchange/claim_rows.hpp"
#include "exchange/x12/transactions.hpp"

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

/// A payment of each 835 transaction. Of every line, charge - adjustments = paid; together they pay
/// what the claims state (CLP04), less what the payer keeps for itself (PLB), so that nothing is
/// counted twice: beside the lines (SVC) of a claim there is an entry for the claim where something
/// concerns it as a whole or its lines do not add up to it. Where the file itself does not balance
/// (SVC02 - CAS = SVC03; CLP03 - CAS = CLP04; BPR02 = CLP04 - PLB) the missing sum is an adjustment
/// "OA:unstated", and `file.reading.differences` says so.
/// The code of a line is the one that was billed (SVC06 where the payer changed it).
[[nodiscard]] std::vector<PaymentRead> read_payments_835(X12File& file, const Currency& otherwise);

}  // namespace sparewell::exchange
