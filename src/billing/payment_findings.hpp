/// Findings about single claim lines and entries of remittances.
#pragma once

#include <string>
#include <unordered_map>
#include <vector>

#include "billing/adjustments.hpp"
#include "billing/finding.hpp"
#include "billing/payment_answers.hpp"
#include "billing/rule_book.hpp"

namespace sparewell::billing {

class PaymentView {
 public:
  PaymentView(const Clinic& of, const ClinicIndex& by, const PaymentAnswers& joined);

  const Clinic& clinic;
  const ClinicIndex& index;
  const PaymentAnswers& answers;

  /// By an answer of its own, even if it was taken back since, or one for its claim as a whole.
  [[nodiscard]] bool is_answered(std::size_t claim_line) const;
  /// Puts a line into the finding "not answered" of its claim.
  void add_line(std::size_t claim_line, Date due, BillingFinding& finding) const;
  /// What the answers to a claim line say beyond the ordinary.
  void judge_line(std::size_t claim_line, const RuleBook& rules,
                  std::vector<BillingFinding>& into) const;
  /// The same of an entry for a claim as a whole.
  void judge_claim(std::size_t entry, const RuleBook& rules,
                   std::vector<BillingFinding>& into) const;
  [[nodiscard]] BillingFinding without_claim(std::size_t remittance_line) const;

 private:
  /// The answers of one payer to one claim line, or one entry for a claim, added up.
  struct Answered {
    std::string payer;
    std::string status;
    std::vector<std::size_t> lines;
    Money charge;
    Money paid;
    AdjustmentSums sums;
    std::optional<int> quantity;
    Date paid_on;

    [[nodiscard]] bool is_denial() const;
    [[nodiscard]] bool is_of_later_payer() const;
  };
  [[nodiscard]] std::vector<Answered> by_payer(const std::vector<std::size_t>& lines) const;
  [[nodiscard]] Date paid_on(const RemittanceLine& line) const;
  [[nodiscard]] bool was_paid_elsewhere(std::size_t claim_line) const;
  [[nodiscard]] bool answered_as_whole(const std::string& claim_ref) const;
  [[nodiscard]] BillingFinding start(FindingKind kind, const ClaimLine& line,
                                     const Answered& answer) const;
  void judge(const Answered& answer, std::size_t claim_line, const RuleBook& rules,
             std::vector<BillingFinding>& into) const;
  void judge_taken_back(std::size_t claim_line, std::vector<BillingFinding>& into) const;

  std::unordered_map<std::string, Date> days_;  ///< by payer and reference
  std::unordered_map<std::string, std::vector<std::size_t>>
      alike_;  ///< by patient, code, side, day
  std::unordered_map<std::string, std::vector<std::size_t>> by_claim_;
};

}  // namespace sparewell::billing
