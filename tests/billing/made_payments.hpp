// Invented claims and the remittances that answer them as they should, for tests to disturb.
#pragma once

#include <algorithm>
#include <random>
#include <string>

#include <fmt/format.h>

#include "billing/payments.hpp"

namespace sparewell::billing::testing {

inline const Currency usd{"USD"};
inline const Date made_today = make_date(2026, 11, 25);
inline Money dollars(std::int64_t cents) {
  return {cents, usd};
}

inline PayerRule payer_rule(PayerRuleKind kind, std::string payer) {
  PayerRule made;
  made.rule = kind;
  made.payer = std::move(payer);
  return made;
}

/// Answers within 30 days; Northfield Health pays 80.00 for a piece of Z0001.
inline std::vector<PayerRule> payer_rules() {
  auto answer = payer_rule(PayerRuleKind::answer, "");
  answer.days = 30;
  auto fee = payer_rule(PayerRuleKind::fee, "Northfield Health");
  fee.code = "Z0001";
  fee.amount = dollars(8000);
  return {answer, fee};
}

inline ClaimLine claim_line(std::string ref, std::string code, Date day, int quantity,
                            std::int64_t cents) {
  ClaimLine made;
  made.claim_ref = std::move(ref);
  made.patient.text = "P-1";
  made.side = Side::right;
  made.service_date = day;
  made.code = std::move(code);
  made.modifiers = {"RT"};
  made.quantity = quantity;
  made.charge = dollars(cents);
  made.payer = "Northfield Health";
  return made;
}

/// The answer to a claim line: the fee is 80 % of the charge, the rest is contractual.
inline RemittanceLine answer_to(const ClaimLine& line, const std::string& reference, int position) {
  RemittanceLine made;
  made.payer = line.payer;
  made.reference = reference;
  made.position = position;
  made.claim_ref = line.claim_ref;
  made.status = "1";
  made.patient = line.patient;
  made.side = line.side;
  made.service_date = line.service_date;
  made.code = line.code;
  made.modifiers = line.modifiers;
  made.quantity = line.quantity;
  made.charge = *line.charge;
  made.paid = dollars(line.charge->minor * 4 / 5);
  made.adjustments = {
      adjustment_text({"CO", "45", dollars(line.charge->minor - made.paid.minor), {}})};
  made.line_control = line.line_control;
  return made;
}

inline void deny(RemittanceLine& line, const std::string& reason) {
  line.status = "4";
  line.paid = dollars(0);
  line.quantity = 0;
  line.adjustments = {adjustment_text({"CO", reason, line.charge, {}})};
}

/// `line` taken back.
inline RemittanceLine reversal_of(RemittanceLine line, const std::string& reference, int position) {
  line.reference = reference;
  line.position = position;
  line.status = "22";
  line.charge.minor *= -1;
  line.paid.minor *= -1;
  for (auto& text : line.adjustments) {
    auto adjustment = *parse_adjustment(text, usd);
    adjustment.amount.minor *= -1;
    text = adjustment_text(adjustment);
  }
  return line;
}

inline void add_payment(Clinic& clinic, const std::string& payer, const std::string& reference,
                        Date day) {
  std::int64_t total = 0;
  for (const auto& line : clinic.remittance_lines) {
    if (line.payer == payer && line.reference == reference) total += line.paid.minor;
  }
  clinic.remittances.push_back({payer, reference, day, dollars(total), "made"});
}

/// `claims` claims of one to three lines, a week apart, each answered 20 days later. Some repeat
/// their line numbers, some name the claim alone.
inline Clinic made_clinic(int claims, unsigned seed) {
  Clinic made;
  made.settings.currency = usd;
  std::mt19937 random{seed};
  for (int c = 1; c <= claims; ++c) {
    const Date day = made_today - days{60 + 7 * (claims - c)};
    const auto reference = fmt::format("PAY-{}", c);
    const int lines = 1 + static_cast<int>(random() % 3);
    for (int i = 1; i <= lines; ++i) {
      const int quantity = 1 + static_cast<int>(random() % 3);
      auto line = claim_line(fmt::format("CL-{}", c), fmt::format("Z000{}", i), day, quantity,
                             10000 * quantity);
      line.patient.text = fmt::format("P-{}", c % 7);
      if (random() % 2 == 0) line.side = Side::left;
      if (random() % 2 == 0) line.line_control = fmt::format("{}", i);
      made.remittance_lines.push_back(answer_to(line, reference, i));
      made.claim_lines.push_back(std::move(line));
    }
    add_payment(made, "Northfield Health", reference, day + days{20});
  }
  return made;
}

inline PaymentBooks reconcile(const Clinic& clinic) {
  const auto rules = payer_rules();
  return reconcile_payments(clinic, RuleBook{rules}, made_today);
}

}  // namespace sparewell::billing::testing
