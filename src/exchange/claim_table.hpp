/// Reads claims and payments out of tables of other programs.
#pragma once

#include "exchange/claim_rows.hpp"
#include "exchange/mapped_table.hpp"
#include "exchange/paid_rows.hpp"

namespace sparewell::exchange {

/// A claim line of each row. A quantity or charge below zero takes an earlier line back: the
/// quantity is then above zero and the charge below. Side also as L, R, LT, RT, and by the
/// modifiers where there is no column; kinds of submission also as 1, 7, 8. Amounts are in
/// `currency`. Rows without claim, code and day are left out; if they hold an amount, `notes` says
/// so.
[[nodiscard]] ClaimsRead read_claim_table(const MappedTable& table, const Currency& currency,
                                          std::vector<std::string>& notes);

struct PaymentsRead {
  std::vector<PaymentRead> payments;
  std::vector<RefusedPaidRow> refused;
};

/// The rows of each payer and reference are one payment, whose total is their sum. charge -
/// adjustments = paid holds for every line: a contractual amount is "CO:45", the patient's share
/// "PR:unstated", what is left "OA:unstated".
[[nodiscard]] PaymentsRead read_remittance_table(const MappedTable& table, const Currency& currency,
                                                 std::vector<std::string>& notes);

/// Refused rows under our names, which can be corrected and read again.
[[nodiscard]] std::string paid_rejects_text(const std::vector<RefusedPaidRow>& rows);

/// Cells of a row under our names, in the form of the clinic folder; what cannot be read stays as
/// it is, and the first fault is kept.
class RowCells {
 public:
  RowCells(const MappedTable& of, const SheetRow& in) : table_{of}, row_{in} {}

  void text(const char* field);
  void date(const char* field);
  void side();
  void modifiers();
  void whole(const char* field);
  /// In `currency`.
  void amount(const char* field, const Currency& currency);

  [[nodiscard]] bool blank(const char* field) const { return cells.at(field).empty(); }
  [[nodiscard]] PersonClue person() const;

  std::map<std::string, std::string> cells;
  std::optional<Fault> fault;

 private:
  void keep(const char* field, std::string value, Reason reason);

  const MappedTable& table_;
  const SheetRow& row_;
};

}  // namespace sparewell::exchange
