/// Claim lines as a file of another program gives them, before it is known whose they are.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "clinic/claim.hpp"
#include "exchange/table.hpp"

namespace sparewell::exchange {

/// What a file says of whose line it is; never shown.
struct PersonClue {
  std::string patient_ref;
  std::string member_id;  ///< the payer's number for them, or the clinic's own
  std::string given_name;
  std::string family_name;
  std::optional<Date> birth_date;
};

/// One line, its cells under the names of claims.csv and in its form: ISO dates, '.' before
/// decimals. A cell that could not be read is as it was.
struct ClaimRow {
  int at = 0;  ///< the line of a table, or the segment of an X12 file
  std::map<std::string, std::string> cells;
  PersonClue person;
  std::optional<Fault> fault;  ///< found while the cells were read
};

/// What a file of claims holds.
struct ClaimsRead {
  std::vector<ClaimRow> rows;
  int claims = 0;
  Money stated;  ///< what the file says that its claims come to; below zero what is taken back
  Money summed;  ///< the sum of the lines' charges as far as they could be read
};

/// The row as a claim line, or the first thing that is wrong with it.
[[nodiscard]] std::optional<Fault> read_claim_row(const ClaimRow& row, const Currency& currency,
                                                  ClaimLine& into);

/// Rows as a file claims.csv with the columns of a file of refused rows.
[[nodiscard]] std::string claim_rejects_text(const std::vector<ClaimRow>& rows);

}  // namespace sparewell::exchange
