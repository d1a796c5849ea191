#include "billing/payment_findings.hpp"

#include <algorithm>
#include <array>
#include <span>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "billing/payment_terms.hpp"

namespace sparewell::billing {
namespace {

std::string same_service(const ClaimLine& line) {
  return fmt::format("{}/{}/{}/{}", line.patient.text, line.code, line.side ? word(*line.side) : "",
                     iso_text(line.service_date));
}

}  // namespace

PaymentView::PaymentView(const Clinic& of, const ClinicIndex& by, const PaymentAnswers& joined)
    : clinic{of}, index{by}, answers{joined} {
  for (const auto& each : clinic.remittances) {
    days_[each.payer + '\x1F' + each.reference] = each.paid_on;
  }
  for (std::size_t i = 0; i < clinic.claim_lines.size(); ++i) {
    alike_[same_service(clinic.claim_lines[i])].push_back(i);
    by_claim_[clinic.claim_lines[i].claim_ref].push_back(i);
  }
}

bool PaymentView::Answered::is_denial() const {
  return status == "4" ||
         (paid.minor == 0 && charge.minor > 0 && sums.patient == 0 && sums.earlier_payer == 0);
}

/// Status 2 and 3, and 20 and 21 where the claim was handed on (from memory).
bool PaymentView::Answered::is_of_later_payer() const {
  return status == "2" || status == "3" || status == "20" || status == "21";
}

Date PaymentView::paid_on(const RemittanceLine& line) const {
  return days_.at(line.payer + '\x1F' + line.reference);
}

std::vector<PaymentView::Answered> PaymentView::by_payer(
    const std::vector<std::size_t>& lines) const {
  std::vector<Answered> made;
  for (const auto at : lines) {
    const auto& line = clinic.remittance_lines[at];
    auto known = std::ranges::find(made, line.payer, &Answered::payer);
    if (known == made.end()) {
      known = made.insert(made.end(), Answered{});
      known->payer = line.payer;
      known->charge.currency = line.charge.currency;
      known->paid.currency = line.paid.currency;
    }
    known->lines.push_back(at);
    known->status = line.status;
    known->charge.minor += line.charge.minor;
    known->paid.minor += line.paid.minor;
    known->sums.add(adjustment_sums(line));
    if (line.quantity) known->quantity = known->quantity.value_or(0) + *line.quantity;
    known->paid_on = std::max(known->paid_on, paid_on(line));
  }
  return made;
}

bool PaymentView::answered_as_whole(const std::string& claim_ref) const {
  const auto whole = answers.of_claim.find(claim_ref);
  return whole != answers.of_claim.end() && std::ranges::any_of(whole->second, [&](std::size_t at) {
           return clinic.remittance_lines[at].charge.minor != 0;
         });
}

bool PaymentView::is_answered(std::size_t claim_line) const {
  return !answers.standing[claim_line].empty() || !answers.taken_back[claim_line].empty() ||
         answered_as_whole(clinic.claim_lines[claim_line].claim_ref);
}

void PaymentView::add_line(std::size_t claim_line, Date due, BillingFinding& finding) const {
  const auto& line = clinic.claim_lines[claim_line];
  const bool is_new = finding.evidence.claim_lines.empty();
  finding.evidence.claim_lines.push_back(claim_line);
  finding.quantity += line.quantity;
  finding.theirs += line.quantity;
  if (is_new) {
    finding.kind = FindingKind::not_answered;
    finding.key = fmt::format("{}/{}", finding_word(finding.kind), line.claim_ref);
    finding.patient = line.patient;
    finding.payer = payer_of(line, index);
    finding.reference = line.claim_ref;
    finding.since = line.service_date;
    finding.other_day = due;
    finding.side = line.side;
    finding.code = line.code;
    finding.money = line.charge;
    finding.cause = Cause::unknown;
    finding.remedy = Remedy::ask_payer;
  } else {
    finding.since = std::min(finding.since, line.service_date);
    finding.other_day = std::min(*finding.other_day, due);
    if (finding.side != line.side) finding.side.reset();
    if (finding.code != line.code) finding.code.clear();
    finding.money = line.charge && same_currency(finding.money, *line.charge)
                        ? std::optional{*finding.money + *line.charge}
                        : std::nullopt;
  }
  finding.our_amount = finding.money;
}

BillingFinding PaymentView::start(FindingKind kind, const ClaimLine& line,
                                  const Answered& answer) const {
  BillingFinding made;
  made.kind = kind;
  made.key = fmt::format("{}/{}/{}", finding_word(kind), answer.payer, claim_line_key(line));
  made.patient = line.patient;
  made.side = line.side;
  made.payer = answer.payer;
  made.code = line.code;
  made.reference = line.claim_ref;
  made.since = answer.paid_on;
  made.other_day = line.service_date;
  made.quantity = line.quantity;
  made.ours = line.quantity;
  made.theirs = answer.quantity.value_or(answer.paid.minor == 0 ? 0 : line.quantity);
  made.their_amount = Money{answer.paid.minor + answer.sums.patient, answer.paid.currency};
  made.other = fmt::format("{}", fmt::join(answer.sums.reasons, "; "));
  made.evidence.remittance_lines = answer.lines;
  return made;
}

bool PaymentView::was_paid_elsewhere(std::size_t claim_line) const {
  const auto paid = [&](std::size_t at) { return clinic.remittance_lines[at].paid.minor > 0; };
  return std::ranges::any_of(
      alike_.at(same_service(clinic.claim_lines[claim_line])), [&](std::size_t other) {
        return other != claim_line && std::ranges::any_of(answers.standing[other], paid);
      });
}

void PaymentView::judge(const Answered& answer, std::size_t claim_line, const RuleBook& rules,
                        std::vector<BillingFinding>& into) const {
  const auto& line = clinic.claim_lines[claim_line];
  const auto currency = answer.paid.currency;
  const auto fee = answer.is_of_later_payer() ? std::nullopt : fee_of(line, answer.payer, rules);
  const bool fee_known = same_currency(fee, answer.paid);
  const auto billed = same_currency(line.charge, answer.charge) ? *line.charge : answer.charge;
  if (answer.is_denial()) {
    if (has_reason(answer.sums, "18") && was_paid_elsewhere(claim_line)) return;
    auto made = start(FindingKind::denied, line, answer);
    made.our_amount = fee_known ? *fee : Money{billed.minor - answer.sums.earlier_payer, currency};
    made.money = Money{made.our_amount->minor - answer.paid.minor, currency};
    made.cause = has_reason(answer.sums, "18") ? Cause::resubmitted : Cause::unknown;
    made.remedy = remedy_of(answer.sums);
    made.evidence.claim_lines = {claim_line};
    into.push_back(std::move(made));
    return;
  }
  const auto allowed = answer.paid.minor + answer.sums.patient + answer.sums.earlier_payer;
  const auto expected = fee_known ? fee->minor : billed.minor - answer.sums.contractual;
  const bool fewer = answer.quantity && *answer.quantity > 0 && *answer.quantity < line.quantity;
  const auto missing = expected - allowed;
  if (missing == 0 && (!fewer || fee_known)) return;
  auto made = start(FindingKind::paid_differently, line, answer);
  made.our_amount = Money{expected, currency};
  made.their_amount = Money{allowed, currency};
  if (fewer) made.quantity = line.quantity - *answer.quantity;
  // What the pieces that were left out are worth is not known.
  if (missing != 0) made.money = Money{missing, currency};
  made.other =
      fmt::format("{}", fmt::join(std::span{answer.sums.reasons}.first(answer.sums.others), "; "));
  made.remedy = answer.sums.other > 0 ? Remedy::appeal : Remedy::ask_payer;
  made.evidence.claim_lines = {claim_line};
  into.push_back(std::move(made));
}

void PaymentView::judge_taken_back(std::size_t claim_line,
                                   std::vector<BillingFinding>& into) const {
  const auto& taken = answers.taken_back[claim_line];
  if (taken.empty() || !answers.standing[claim_line].empty() ||
      answers.waits_for_none[claim_line]) {
    return;
  }
  const auto& line = clinic.claim_lines[claim_line];
  Answered answer;
  Money paid{0, clinic.remittance_lines[taken.front()].paid.currency};
  for (const auto at : taken) {
    const auto& each = clinic.remittance_lines[at];
    answer.payer = each.payer;
    answer.paid_on = std::max(answer.paid_on, paid_on(each));
    if (takes_back(each)) {
      answer.sums.add(adjustment_sums(each));
    } else {
      paid.minor += each.paid.minor;
    }
  }
  if (paid.minor == 0) return;
  answer.lines = taken;
  answer.paid.currency = paid.currency;
  auto made = start(FindingKind::paid_differently, line, answer);
  made.our_amount = paid;
  made.their_amount = Money{0, paid.currency};
  made.money = paid;
  made.remedy = Remedy::ask_payer;
  made.evidence.claim_lines = {claim_line};
  into.push_back(std::move(made));
}

void PaymentView::judge_line(std::size_t claim_line, const RuleBook& rules,
                             std::vector<BillingFinding>& into) const {
  judge_taken_back(claim_line, into);
  for (const auto& answer : by_payer(answers.standing[claim_line])) {
    // Of what was taken back by us, or stood in place of, only a payment that stands is looked at:
    // the claim that counts has its own answer.
    if (!answers.waits_for_none[claim_line]) judge(answer, claim_line, rules, into);
  }
}

}  // namespace sparewell::billing
