/// One disagreement between what was handed out, billed, paid, ordered, received and invoiced.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::billing {

enum class FindingKind {
  // Between parts and claims.
  issued_not_billed,
  billed_not_issued,
  wrong_side,
  wrong_quantity,  ///< of one issue and one claim, too many or too few
  wrong_code,
  wrong_date,
  duplicate,  ///< billed a second time
  no_charge,
  code_not_valid,          ///< not in any list, or not on that day
  reversal_without_claim,  ///< takes back what was never billed
  over_limit,
  replaced_early,  ///< without a recorded reason
  paper_missing,   ///< one that the payer asks for
  no_proof_of_delivery,
  // Between claims and payments.
  not_answered,
  denied,
  paid_differently,
  paid_without_claim,
  // Between orders, receipts and invoices.
  received_not_invoiced,
  invoiced_not_received,
  price_differs,
  freight_differs,
  invoiced_twice,
  credit_due,    ///< for parts sent back
  warranty_due,  ///< a part ended within its maker's term and no credit was asked for
};

/// Which of the three jobs of the books a finding belongs to.
enum class Book { claims, payments, suppliers };
[[nodiscard]] Book book_of(FindingKind kind);

/// Why it is likely so, as far as the records speak for it.
enum class Cause {
  unknown,
  never_billed,      ///< nothing of that code was billed near that day
  billed_for_fewer,  ///< the same issue was billed with a smaller quantity
  billed_for_more,
  side_swapped,
  keyed_twice,    ///< the same reference, or the same day, side and code
  resubmitted,    ///< an earlier claim was sent again and not replaced
  other_patient,  ///< the same code was handed to `other` on that day and not billed
  code_mistaken,  ///< a part of the same kind was handed out, billed under another code
  date_mistaken,
  came_back,           ///< the part was returned soon after it was handed out
  exchanged_by_maker,  ///< it replaced a part of a recall or within its warranty
  still_on_its_way,    ///< too early to be a disagreement of note
  price_list_changed,  ///< the price is that of today's catalogue
  price_break_missed,  ///< the price is that of a smaller quantity
  other_order,         ///< it fits the order `other`
  second_delivery,     ///< it was received after the invoice
  short_delivery,
  free_freight_missed,  ///< the goods were worth free freight
  not_recorded          ///< the record is missing, not necessarily the thing
};

/// What would settle it.
enum class Remedy {
  bill_it,
  take_back,  ///< reverse the claim line, or refund
  replace_claim,
  record_issue,  ///< if it was handed out, put it on record
  record_reason,
  file_paper,
  get_signature,
  ask_payer,
  appeal,
  write_off,
  ask_invoice,
  ask_supplier,  ///< for a credit or a corrected invoice
  record_receipt,
  claim_warranty,
  correct_record
};

/// Positions in the vectors of the Clinic that it was made from.
struct Evidence {
  std::vector<std::size_t> units;  ///< the part that the finding is about is the last one
  std::vector<std::size_t> claim_lines;
  std::vector<std::size_t> remittance_lines;
  std::vector<std::size_t> order_lines;
  std::vector<std::size_t> invoice_lines;
  std::vector<std::size_t> supplier_returns;
};

struct BillingFinding {
  FindingKind kind = FindingKind::issued_not_billed;
  /// The same for the same disagreement whenever it is looked for, from what the records are known
  /// by: answers are kept under it.
  std::string key;
  PatientRef patient;  ///< empty where no patient is concerned
  std::optional<Side> side;
  std::string payer;
  std::string code;  ///< of billing
  ItemCode item;
  SupplierName supplier;
  std::string reference;  ///< of the claim, the order or the invoice
  Date since;             ///< what its age is counted from
  int quantity = 0;       ///< pieces in disagreement
  int ours = 0;           ///< pieces on our side: handed out, received, allowed
  int theirs = 0;         ///< pieces on the other side: billed, invoiced; days that a part lasted
  /// What is at stake: above zero the clinic is to receive it, below zero it has to give it back or
  /// was charged it. Empty: not known.
  std::optional<Money> money;
  std::optional<Money> our_amount;    ///< as ordered, charged or expected; for a piece or a line
  std::optional<Money> their_amount;  ///< as invoiced or paid
  std::optional<Date> other_day;      ///< the other side's
  std::string other;                  ///< the other side's code, patient, order, paper
  /// Of a warranty, where `ours` are the calendar days from issue to end and `theirs` the maker's
  /// term: how much the part was worn when it ended, in days of reference use.
  std::optional<double> wear_age;
  Cause cause = Cause::unknown;
  Remedy remedy = Remedy::correct_record;
  Evidence evidence;
};

/// In the order in which they are listed: by book, kind, patient or supplier, day and key.
void sort_findings(std::vector<BillingFinding>& findings);

/// "issued, not billed", as in `planted.csv`, --json and the keys; stable. People read it through
/// said.
[[nodiscard]] std::string_view finding_word(FindingKind kind);

}  // namespace sparewell::billing
