/// What was billed beside what payers answered and paid.
#pragma once

#include <vector>

#include "billing/finding.hpp"
#include "billing/payment_answers.hpp"
#include "billing/rule_book.hpp"

namespace sparewell::billing {

/// Minor units of one currency, over the remittances paid until today:
/// paid = of_claims + without_claim + by_provider.
struct PaymentTotals {
  Currency currency;
  std::int64_t stated = 0;         ///< the payments' totals as the payers state them
  std::int64_t paid = 0;           ///< all lines
  std::int64_t of_claims = 0;      ///< lines and entries that answer a claim on record
  std::int64_t without_claim = 0;  ///< including what was paid a second time
  std::int64_t by_provider = 0;    ///< between payer and clinic, about no claim
};

struct PaymentBooks {
  std::vector<BillingFinding> findings;  ///< sorted
  PaymentAnswers answers;
  std::vector<PaymentTotals> totals;  ///< by currency
};

/// Joins remittance lines to claim lines (join_payments) and finds, of claims with service until
/// `today`:
/// - not_answered: lines of a claim without any answer when the payer's `answer` days since the
///   service are over. Only of payers of whom a remittance is stored (of any, where the claim names
///   no payer), and only if the answer was due after the first of them.
/// - denied: status 4, or nothing paid and no share of the patient's, with the reason codes in
///   `other`. A denial of what was paid at first, as sent once more, is none.
/// - paid_differently: adjustments that are neither contractual nor the patient's; less than the
///   payer's `fee` for the pieces (or than the charge, where that is less), or more; fewer pieces
///   than billed; another charge than billed; a payment taken back and not paid anew.
/// - paid_without_claim: money about a claim that is not on record, though claims of that time are;
///   or for a line that was paid already.
/// What is contractual is in adjustment_sums. `money`: above zero is still to come.
[[nodiscard]] PaymentBooks reconcile_payments(const Clinic& clinic, const RuleBook& rules,
                                              Date today);

}  // namespace sparewell::billing
