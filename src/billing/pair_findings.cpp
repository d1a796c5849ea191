#include <fmt/format.h>

#include "billing/claim_findings.hpp"

namespace sparewell::billing {
namespace {

struct Verdict {
  FindingKind kind;
  Cause cause;
  Remedy remedy;
};

std::optional<Verdict> verdict_on(Agreement agreement) {
  switch (agreement) {
    case Agreement::came_back:
      return Verdict{FindingKind::billed_not_issued, Cause::came_back, Remedy::take_back};
    case Agreement::side_differs:
      return Verdict{FindingKind::wrong_side, Cause::side_swapped, Remedy::replace_claim};
    case Agreement::code_differs:
      return Verdict{FindingKind::wrong_code, Cause::code_mistaken, Remedy::replace_claim};
    case Agreement::far_apart:
      return Verdict{FindingKind::wrong_date, Cause::date_mistaken, Remedy::replace_claim};
    default:
      return std::nullopt;  // agrees, or find_in_lines says what is amiss
  }
}

void fill(BillingFinding& finding, const Pair& pair, const Issue& issue, const Billed& billed) {
  finding.item = issue.item;
  finding.side = issue.side;
  finding.quantity = pair.pieces.quantity;
  finding.ours = pair.pieces.quantity;
  finding.theirs = pair.pieces.quantity;
  finding.evidence.units = pair.units;
  finding.our_amount = pair.money;
  // The same parts are to be billed for the same money.
  if (pair.money) finding.money = Money{0, pair.money->currency};
  switch (finding.kind) {
    case FindingKind::wrong_side:
      finding.other = billed.side ? word(*billed.side) : "";
      break;
    case FindingKind::wrong_code:
      finding.code = issue.code;
      finding.other = billed.line->code;
      finding.money.reset();
      break;
    case FindingKind::wrong_date:
      finding.since = issue.day;
      finding.other_day = billed.line->service_date;
      break;
    default:  // came back
      finding.ours = 0;
      finding.money = negative(pair.money);
  }
}

}  // namespace

std::optional<Money> negative(const std::optional<Money>& money) {
  if (!money) return std::nullopt;
  return Money{-money->minor, money->currency};
}

BillingFinding finding_of_line(const BookRules& rules, FindingKind kind, const Billed& billed) {
  BillingFinding finding;
  finding.kind = kind;
  finding.patient = billed.line->patient;
  finding.side = billed.side;
  finding.payer = payer_or_patients(rules, billed.line->payer, billed.line->patient);
  finding.code = billed.line->code;
  finding.reference = billed.line->claim_ref;
  finding.since = billed.line->service_date;
  finding.evidence.claim_lines = {billed.position};
  return finding;
}

BillingFinding finding_of_issue(FindingKind kind, const PatientRef& patient, const Issue& issue) {
  BillingFinding finding;
  finding.kind = kind;
  finding.patient = patient;
  finding.side = issue.side;
  finding.code = issue.code;
  finding.item = issue.item;
  finding.since = issue.day;
  return finding;
}

void find_in_pairs(const BookRules& rules, const PatientCase& one, FindingList& found) {
  for (const auto& pair : one.pairs) {
    const auto verdict = verdict_on(pair.pieces.agreement);
    if (!verdict) continue;
    const Issue& issue = one.issues[pair.pieces.issue];
    const Billed& billed = one.billed[pair.pieces.billed];
    if (issue.standing == Standing::before_books && billed.before_books) continue;
    auto finding = finding_of_line(rules, verdict->kind, billed);
    finding.cause = verdict->cause;
    finding.remedy = verdict->remedy;
    fill(finding, pair, issue, billed);
    const auto of_issue = issue_key(one.records.patient, issue.side, issue.code, issue.day);
    found.add(std::move(finding), fmt::format("{} for {}", line_key(*billed.line), of_issue));
  }
}

}  // namespace sparewell::billing
