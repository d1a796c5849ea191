#include <algorithm>

#include <fmt/format.h>

#include "billing/payment_findings.hpp"
#include "billing/payment_terms.hpp"

namespace sparewell::billing {

void PaymentView::judge_claim(std::size_t entry, const RuleBook& rules,
                              std::vector<BillingFinding>& into) const {
  const auto& line = clinic.remittance_lines[entry];
  const auto answer = by_payer({entry}).front();
  const auto& claim = by_claim_.at(line.claim_ref);
  ClaimLine whole;  // the lines of the claim as one
  whole.claim_ref = line.claim_ref;
  whole.patient = clinic.claim_lines[claim.front()].patient;
  whole.service_date = clinic.claim_lines[claim.front()].service_date;
  std::int64_t fees = 0;
  const bool is_whole = answer.charge.minor != 0;
  bool fees_known = is_whole && !answer.is_of_later_payer();
  std::vector<std::size_t> lines;
  for (const auto at : claim) {
    const auto& each = clinic.claim_lines[at];
    if (answers.waits_for_none[at]) continue;
    lines.push_back(at);
    whole.quantity += each.quantity;
    whole.service_date = std::min(whole.service_date, each.service_date);
    const auto fee = fee_of(each, answer.payer, rules);
    fees_known = fees_known && same_currency(fee, answer.paid);
    if (fees_known) fees += fee->minor;
  }
  if (lines.empty()) return;
  const auto allowed = answer.paid.minor + answer.sums.patient + answer.sums.earlier_payer;
  const auto expected = fees_known ? fees : answer.charge.minor - answer.sums.contractual;
  const bool denied = is_whole && answer.is_denial();
  if (!denied && expected == allowed) return;
  auto made = start(denied ? FindingKind::denied : FindingKind::paid_differently, whole, answer);
  const auto ours = denied && !fees_known ? answer.charge.minor : expected;
  made.key = fmt::format("{}/{}/{}", finding_word(made.kind), answer.payer, line.claim_ref);
  made.our_amount = Money{ours, answer.paid.currency};
  made.their_amount = Money{allowed, answer.paid.currency};
  made.money = Money{ours - (denied ? answer.paid.minor : allowed), answer.paid.currency};
  made.remedy = remedy_of(answer.sums);
  made.evidence.claim_lines = lines;
  into.push_back(std::move(made));
}

BillingFinding PaymentView::without_claim(std::size_t remittance_line) const {
  const auto& line = clinic.remittance_lines[remittance_line];
  const auto claim_line = answers.claim_line[remittance_line];
  BillingFinding made;
  made.kind = FindingKind::paid_without_claim;
  made.key = fmt::format("{}/{}/{}/{}", finding_word(made.kind), line.payer, line.reference,
                         line.position);
  made.patient = claim_line ? clinic.claim_lines[*claim_line].patient : line.patient;
  made.side = line.side;
  made.payer = line.payer;
  made.code = line.code;
  made.reference = line.claim_ref.empty() ? line.payer_claim : line.claim_ref;
  made.since = paid_on(line);
  made.quantity = line.quantity.value_or(0);
  made.theirs = made.quantity;
  made.their_amount = line.paid;
  made.money = Money{-line.paid.minor, line.paid.currency};
  made.other_day = line.service_date;
  made.cause = claim_line ? Cause::keyed_twice : Cause::not_recorded;
  made.remedy = claim_line ? Remedy::take_back : Remedy::correct_record;
  if (takes_back(line)) {
    made.cause = Cause::not_recorded;
    made.remedy = Remedy::ask_payer;
  }
  made.evidence.remittance_lines = {remittance_line};
  if (claim_line) made.evidence.claim_lines = {*claim_line};
  return made;
}

}  // namespace sparewell::billing
