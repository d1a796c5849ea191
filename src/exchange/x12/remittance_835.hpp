/// Reads payments of payers with their explanation, X12 835 (005010X221A1).
#pragma once

#include <vector>

#include "exchange/paid_rows.hpp"
#include "exchange/x12/transactions.hpp"

namespace sparewell::exchange {

/// A payment of each 835 transaction. Of every line, charge - adjustments = paid; together they pay
/// what the claims state (CLP04), less what the payer keeps for itself (PLB), so that nothing is
/// counted twice: beside the lines (SVC) of a claim there is an entry for the claim where something
/// concerns it as a whole or its lines do not add up to it. Where the file itself does not balance
/// (SVC02 - CAS = SVC03; CLP03 - CAS = CLP04; BPR02 = CLP04 - PLB) the missing sum is an adjustment
/// "OA:unstated", and `file.reading.differences` says so.
/// The code of a line is the one that was billed (SVC06 where the payer changed it).
[[nodiscard]] std::vector<PaymentRead> read_payments_835(X12File& file, const Currency& otherwise);

}  // namespace sparewell::exchange
