/// Which claim lines the lines of remittances answer.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::billing {

/// Positions in Clinic::claim_lines and Clinic::remittance_lines.
struct PaymentAnswers {
  /// For each claim line the answers that stand, in the order in which they came: one of each
  /// payer, several where a payer split the line.
  std::vector<std::vector<std::size_t>> standing;
  /// For each claim line the answers that the payer has taken back, with what took them back.
  std::vector<std::vector<std::size_t>> taken_back;
  /// For each claim the answers that stand and concern it as a whole.
  std::map<std::string, std::vector<std::size_t>> of_claim;
  /// For each remittance line the claim line that it answers, or took an answer back from.
  std::vector<std::optional<std::size_t>> claim_line;
  /// About a claim that is not on record, or taking back what is not on record as paid.
  std::vector<std::size_t> without_claim;
  std::vector<std::size_t> paid_again;  ///< about a claim line that the payer had paid already
  /// For each claim line: it waits for no answer, because it was taken back, stood in place of, or
  /// takes something back itself.
  std::vector<bool> waits_for_none;
};

/// Looks at each remittance line paid until `today` once, in the order of payment. It goes to the
/// claim line whose number it repeats (line_control, with claim_ref unless the number is unique),
/// else to the nearest line of its claim with its code: by side, day and charge. Without a claim
/// on record it goes to a line of its patient with the same code, side, day and charge. A reversal
/// (status 22) takes back the payer's standing answer; a denial gives way to a later payment. The
/// result does not depend on the order of the records.
[[nodiscard]] PaymentAnswers join_payments(const Clinic& clinic, Date today);

/// True for a status 22, or amounts below zero: takes an earlier payment back.
[[nodiscard]] bool takes_back(const RemittanceLine& line);

/// Who a claim line is billed to: its own payer, else its patient's; "" when neither is recorded.
[[nodiscard]] std::string payer_of(const ClaimLine& line, const ClinicIndex& index);

}  // namespace sparewell::billing
