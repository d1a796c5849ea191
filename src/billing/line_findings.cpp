#include <algorithm>

#include "billing/claim_findings.hpp"

namespace sparewell::billing {
namespace {

/// The item that was handed out with the line; empty when none was.
ItemCode item_of(const PatientCase& one, std::size_t place) {
  const auto is_of = [&](const Pair& pair) { return pair.pieces.billed == place; };
  const auto pair = std::ranges::find_if(one.pairs, is_of);
  return pair == one.pairs.end() ? ItemCode{} : one.issues[pair->pieces.issue].item;
}

void find_no_charge(const BookRules& rules, const UsualCharges& usual, const PatientCase& one,
                    std::size_t place, FindingList& found) {
  const Billed& billed = one.billed[place];
  const auto& charge = billed.line->charge;
  if (billed.quantity == 0 || (charge && charge->minor != 0)) return;
  auto finding = finding_of_line(rules, FindingKind::no_charge, billed);
  finding.quantity = billed.quantity;
  finding.ours = billed.quantity;
  finding.theirs = billed.quantity;
  finding.cause = Cause::not_recorded;
  finding.remedy = Remedy::replace_claim;
  finding.item = item_of(one, place);
  const auto each = expected_charge(rules, usual, finding.payer, finding.item, billed.line->code,
                                    billed.line->service_date);
  if (each) finding.money = *each * billed.quantity;
  finding.our_amount = each;
  found.add(std::move(finding), line_key(*billed.line));
}

/// One finding for a code that stands in no list, one for each line outside of a code's days.
void find_invalid_code(const BookRules& rules, const PatientCase& one, std::size_t place,
                       FindingList& found) {
  const Billed& billed = one.billed[place];
  const ClaimLine& line = *billed.line;
  if (billed.quantity == 0 || rules.codes->find(line.code, line.service_date) != nullptr) return;
  auto finding = finding_of_line(rules, FindingKind::code_not_valid, billed);
  finding.quantity = billed.quantity;
  finding.theirs = billed.quantity;
  finding.money = negative(billed.charge);
  finding.their_amount = billed.charge;
  finding.remedy = Remedy::replace_claim;
  for (const auto& pair : one.pairs) {
    if (pair.pieces.billed != place) continue;
    const Issue& issue = one.issues[pair.pieces.issue];
    finding.ours += pair.pieces.quantity;
    finding.item = issue.item;
    if (issue.code != line.code) {
      finding.cause = Cause::code_mistaken;
      finding.other = issue.code;
    }
    auto& units = finding.evidence.units;
    units.insert(units.end(), pair.units.begin(), pair.units.end());
  }
  found.add(std::move(finding), line_key(line));
}

void find_no_side(const BookRules& rules, const Billed& billed, FindingList& found) {
  const ClaimLine& line = *billed.line;
  if (billed.side || billed.quantity == 0) return;
  auto finding = finding_of_line(rules, FindingKind::wrong_side, billed);
  if (rules.rules->find(PayerRuleKind::side_lines, finding.payer, line.code, line.service_date) ==
      nullptr) {
    return;
  }
  finding.quantity = billed.quantity;
  finding.theirs = billed.quantity;
  finding.cause = Cause::not_recorded;
  finding.remedy = Remedy::replace_claim;
  finding.their_amount = billed.charge;
  if (billed.charge) finding.money = Money{0, billed.charge->currency};
  found.add(std::move(finding), line_key(line));
}

}  // namespace

void find_in_lines(const BookRules& rules, const UsualCharges& usual, const PatientCase& one,
                   FindingList& found) {
  for (std::size_t j = 0; j < one.billed.size(); ++j) {
    if (one.billed[j].before_books) continue;
    find_no_charge(rules, usual, one, j, found);
    find_invalid_code(rules, one, j, found);
    find_no_side(rules, one.billed[j], found);
  }
  for (const auto& loose : one.loose) {
    const ClaimLine& line = rules.clinic->claim_lines[loose.line];
    const Billed billed{loose.line, &line, billed_side(line), loose.quantity, line.charge, false};
    auto finding = finding_of_line(rules, FindingKind::reversal_without_claim, billed);
    finding.quantity = loose.quantity;
    finding.theirs = loose.quantity;
    finding.money = loose.money;
    finding.their_amount = line.charge;
    finding.other = line.replaces;
    finding.remedy = Remedy::correct_record;
    found.add(std::move(finding), line_key(line));
  }
}

}  // namespace sparewell::billing
