#include "billing/payments.hpp"

#include <algorithm>
#include <map>
#include <set>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "billing/payment_findings.hpp"

namespace sparewell::billing {
namespace {

void add_unanswered(const PaymentView& view, const RuleBook& rules, Date today,
                    std::vector<BillingFinding>& into) {
  std::map<std::string, Date> first_by_payer;
  std::optional<Date> first;
  for (const auto& each : view.clinic.remittances) {
    if (each.paid_on > today) continue;
    const auto [known, is_new] = first_by_payer.emplace(each.payer, each.paid_on);
    if (!is_new) known->second = std::min(known->second, each.paid_on);
    first = first ? std::min(*first, each.paid_on) : each.paid_on;
  }
  if (!first) return;
  std::map<std::string, BillingFinding> by_claim;
  for (std::size_t i = 0; i < view.clinic.claim_lines.size(); ++i) {
    const auto& line = view.clinic.claim_lines[i];
    if (view.answers.waits_for_none[i] || view.is_answered(i) || line.service_date > today)
      continue;
    const auto payer = payer_of(line, view.index);
    const auto since = first_by_payer.find(payer);
    if (!payer.empty() && since == first_by_payer.end()) continue;
    const auto* rule = rules.find(PayerRuleKind::answer, payer, line.code, line.service_date);
    if (rule == nullptr || !rule->days) continue;
    const Date due = line.service_date + days{*rule->days};
    if (due >= today || due < (payer.empty() ? *first : since->second)) continue;
    view.add_line(i, due, by_claim[line.claim_ref]);
  }
  for (auto& [claim, finding] : by_claim) into.push_back(std::move(finding));
}

/// Money about claims that are not on record, once records of claims have begun.
void add_without_claim(const PaymentView& view, std::vector<BillingFinding>& into) {
  std::optional<Date> first;
  for (const auto& line : view.clinic.claim_lines) {
    first = first ? std::min(*first, line.service_date) : line.service_date;
  }
  if (!first) return;
  for (const auto at : view.answers.without_claim) {
    const auto& line = view.clinic.remittance_lines[at];
    if (line.paid.minor == 0 || (line.service_date && *line.service_date < *first)) continue;
    into.push_back(view.without_claim(at));
  }
  for (const auto at : view.answers.paid_again) into.push_back(view.without_claim(at));
}

std::vector<PaymentTotals> totals_of(const PaymentView& view, Date today) {
  std::map<Currency, PaymentTotals> by_currency;
  std::set<std::pair<std::string, std::string>> until_today;
  for (const auto& each : view.clinic.remittances) {
    if (each.paid_on > today) continue;
    until_today.emplace(each.payer, each.reference);
    by_currency[each.total.currency].stated += each.total.minor;
  }
  std::set<std::size_t> without;
  without.insert(view.answers.without_claim.begin(), view.answers.without_claim.end());
  without.insert(view.answers.paid_again.begin(), view.answers.paid_again.end());
  for (std::size_t i = 0; i < view.clinic.remittance_lines.size(); ++i) {
    const auto& line = view.clinic.remittance_lines[i];
    if (!until_today.contains({line.payer, line.reference})) continue;
    auto& totals = by_currency[line.paid.currency];
    totals.paid += line.paid.minor;
    (line.entry == RemittanceEntry::provider ? totals.by_provider
     : without.contains(i)                   ? totals.without_claim
                                             : totals.of_claims) += line.paid.minor;
  }
  std::vector<PaymentTotals> made;
  for (auto& [currency, totals] : by_currency) {
    totals.currency = currency;
    made.push_back(totals);
  }
  return made;
}

}  // namespace

PaymentBooks reconcile_payments(const Clinic& clinic, const RuleBook& rules, Date today) {
  PaymentBooks books;
  books.answers = join_payments(clinic, today);
  const ClinicIndex index{clinic};
  const PaymentView view{clinic, index, books.answers};
  add_unanswered(view, rules, today, books.findings);
  for (std::size_t i = 0; i < clinic.claim_lines.size(); ++i) {
    view.judge_line(i, rules, books.findings);
  }
  for (const auto& [claim, entries] : books.answers.of_claim) {
    for (const auto at : entries) view.judge_claim(at, rules, books.findings);
  }
  add_without_claim(view, books.findings);
  sort_findings(books.findings);
  books.totals = totals_of(view, today);
  return books;
}

}  // namespace sparewell::billing
