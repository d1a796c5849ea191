/// Reads professional claims, X12 837P (005010X222A1).
#pragma once

#include <string>
#include <vector>

#include "exchange/claim_rows.hpp"
#include "exchange/x12/transactions.hpp"

namespace sparewell::exchange {

struct ClaimsRead {
  std::vector<ClaimRow> rows;
  int claims = 0;
  Money stated;  ///< the sum of CLM02; of claims that are taken back below zero
  Money summed;  ///< the sum of SV102 as far as they could be read, likewise
};

/// A line of each SV1 in each CLM of the file's 837 transactions. Charges of claims that are taken
/// back (frequency code 8) are below zero. Side by the modifiers RT and LT. Nothing is dropped: a
/// line that lacks something has it missing in its cells. In `file.reading` stand the segments that
/// were not understood, the claims whose lines do not add up to what they state, and notes.
/// All amounts are in the currency that the file names first, or in `otherwise`.
[[nodiscard]] ClaimsRead read_claims_837(X12File& file, const Currency& otherwise);

}  // namespace sparewell::exchange
