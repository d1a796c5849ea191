#include <algorithm>
#include <tuple>

#include "billing/claim_findings.hpp"

namespace sparewell::billing {
namespace {

/// Pieces of one code handed out on one day for one side, of one or several items.
struct Handed {
  int pieces = 0;
  std::vector<const Issue*> issues;
  std::vector<std::vector<std::size_t>> left;  ///< of each issue
};

int count_left(const Handed& handed) {
  std::size_t count = 0;
  for (const auto& units : handed.left) count += units.size();
  return static_cast<int>(count);
}

/// Sets what the pieces left are expected to bring: unknown when that of one item is.
void set_money(const BookRules& rules, const UsualCharges& usual, const Handed& handed,
               BillingFinding& finding) {
  std::optional<Money> sum;
  std::optional<Money> each;
  for (std::size_t i = 0; i < handed.issues.size(); ++i) {
    if (handed.left[i].empty()) continue;
    const Issue& issue = *handed.issues[i];
    const auto charge =
        expected_charge(rules, usual, finding.payer, issue.item, issue.code, issue.day);
    if (!charge || (sum && sum->currency != charge->currency)) return;
    const auto more = *charge * static_cast<std::int64_t>(handed.left[i].size());
    each = sum && each != charge ? std::nullopt : charge;
    sum = sum ? *sum + more : more;
  }
  finding.money = sum;
  finding.our_amount = each;
}

/// The claim of which other pieces of the same issue are a line; "" when none are.
std::string partner_claim(const PatientCase& one, const Handed& handed,
                          std::vector<std::size_t>& lines) {
  std::string claim;
  for (const auto& pair : one.pairs) {
    const Issue* issue = &one.issues[pair.pieces.issue];
    if (std::ranges::find(handed.issues, issue) == handed.issues.end()) continue;
    const Billed& billed = one.billed[pair.pieces.billed];
    if (claim.empty()) claim = billed.line->claim_ref;
    lines.push_back(billed.position);
  }
  return claim;
}

}  // namespace

void find_unbilled(const BookRules& rules, const UsualCharges& usual, const PatientCase& one,
                   FindingList& found) {
  std::map<std::tuple<Date, Side, std::string>, Handed> all;
  for (std::size_t i = 0; i < one.issues.size(); ++i) {
    const Issue& issue = one.issues[i];
    if (issue.standing != Standing::expected) continue;
    Handed& handed = all[{issue.day, issue.side, issue.code}];
    handed.pieces += static_cast<int>(issue.units.size());
    handed.issues.push_back(&issue);
    handed.left.push_back(one.units_left[i]);
  }
  for (const auto& [place, handed] : all) {
    const int left = count_left(handed);
    if (left == 0) continue;
    const bool none_billed = left == handed.pieces;
    const auto kind = none_billed ? FindingKind::issued_not_billed : FindingKind::wrong_quantity;
    const auto first = static_cast<std::size_t>(
        std::ranges::find_if(handed.left, [](const auto& units) { return !units.empty(); }) -
        handed.left.begin());
    auto finding = finding_of_issue(kind, one.records.patient, *handed.issues[first]);
    finding.payer = payer_or_patients(rules, "", one.records.patient);
    finding.quantity = left;
    finding.ours = handed.pieces;
    finding.theirs = handed.pieces - left;
    finding.remedy = none_billed ? Remedy::bill_it : Remedy::replace_claim;
    const bool recent = days_between(finding.since, rules.today) <= ordinary_days;
    finding.cause = none_billed ? Cause::never_billed : Cause::billed_for_fewer;
    if (none_billed && recent) finding.cause = Cause::still_on_its_way;
    for (const auto& units : handed.left) {
      finding.evidence.units.insert(finding.evidence.units.end(), units.begin(), units.end());
    }
    finding.reference = partner_claim(one, handed, finding.evidence.claim_lines);
    set_money(rules, usual, handed, finding);
    const auto& [day, side, code] = place;
    found.add(std::move(finding), issue_key(one.records.patient, side, code, day));
  }
}

}  // namespace sparewell::billing
