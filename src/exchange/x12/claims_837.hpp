/// Reads professional claims, X12 837P (005010X222A1).
#pragma once

#include "exchange/claim_rows.hpp"
#include "exchange/x12/transactions.hpp"

namespace sparewell::exchange {

/// A line of each SV1 in each CLM of the file's 837 transactions. Charges of claims that are taken
/// back (frequency code 8) are below zero. Side by the modifiers RT and LT. Nothing is dropped: a
/// line that lacks something has it missing in its cells. In `file.reading` stand the segments that
/// were not understood, the claims whose lines do not add up to what they state, and notes.
/// All amounts are in the currency that the file names first, or in `otherwise`.
[[nodiscard]] ClaimsRead read_claims_837(X12File& file, const Currency& otherwise);

}  // namespace sparewell::exchange
