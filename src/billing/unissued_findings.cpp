#include <algorithm>
#include <cstdlib>

#include "billing/claim_findings.hpp"

namespace sparewell::billing {
namespace {

/// Pieces of a line that have their part.
int paired_pieces(const PatientCase& one, std::size_t billed) {
  return one.billed[billed].quantity - one.pieces_left[billed];
}

bool same_service(const ClaimLine& a, const ClaimLine& b) {
  return a.service_date == b.service_date && a.code == b.code && billed_side(a) == billed_side(b) &&
         a.quantity == b.quantity;
}

/// Another line that the same parts are billed with; nullptr when there is none.
const Billed* first_time(const PatientCase& one, std::size_t again) {
  const Billed& billed = one.billed[again];
  const Billed* nearest = nullptr;
  const auto apart = [&](const Billed& other) {
    return std::abs(days_between(other.line->service_date, billed.line->service_date));
  };
  for (std::size_t j = 0; j < one.billed.size(); ++j) {
    const Billed& other = one.billed[j];
    if (j == again || other.line->code != billed.line->code || paired_pieces(one, j) == 0) continue;
    if (other.side && billed.side && other.side != billed.side) continue;
    if (apart(other) > ordinary_days) continue;
    if (nearest == nullptr || apart(other) < apart(*nearest)) nearest = &other;
  }
  return nearest;
}

/// Whether all lines of one claim stand in another as well, several of them or on another day.
Cause cause_of_second(const PatientCase& one, const Billed& again, const Billed& first) {
  if (again.line->claim_ref == first.line->claim_ref) return Cause::keyed_twice;
  int lines = 0;
  for (const auto& each : one.billed) {
    if (each.line->claim_ref != again.line->claim_ref) continue;
    ++lines;
    const bool repeated = std::ranges::any_of(one.billed, [&](const Billed& other) {
      return other.line->claim_ref == first.line->claim_ref &&
             same_service(*each.line, *other.line);
    });
    if (!repeated) {
      const bool same_day = again.line->service_date == first.line->service_date;
      return same_day ? Cause::keyed_twice : Cause::resubmitted;
    }
  }
  return lines > 1 ? Cause::resubmitted : Cause::keyed_twice;
}

void set_partner(const PatientCase& one, std::size_t billed, BillingFinding& finding) {
  for (const auto& pair : one.pairs) {
    if (pair.pieces.billed != billed) continue;
    const Issue& issue = one.issues[pair.pieces.issue];
    finding.item = issue.item;
    finding.other_day = issue.day;
    auto& units = finding.evidence.units;
    units.insert(units.end(), pair.units.begin(), pair.units.end());
  }
}

}  // namespace

bool counts_parts(const CodeTable& codes, const ClaimLine& line) {
  const auto* row = codes.find(line.code, line.service_date);
  return row == nullptr || row->unit.empty() || row->unit == "each";
}

void find_unissued(const BookRules& rules, const PatientCase& one, FindingList& found) {
  for (std::size_t j = 0; j < one.billed.size(); ++j) {
    const Billed& billed = one.billed[j];
    const bool no_pieces = billed.line->quantity == 0;
    if (billed.before_books || !counts_parts(*rules.codes, *billed.line)) continue;
    if (one.pieces_left[j] == 0 && !no_pieces) continue;
    // A code that does not hold is a finding of its own.
    const bool holds = rules.codes->find(billed.line->code, billed.line->service_date) != nullptr;
    if (!holds && paired_pieces(one, j) == 0) continue;
    auto finding = finding_of_line(rules, FindingKind::billed_not_issued, billed);
    finding.quantity = one.pieces_left[j];
    finding.ours = paired_pieces(one, j);
    finding.theirs = billed.quantity;
    finding.money = negative(one.money_left[j]);
    finding.their_amount = billed.charge;
    finding.remedy = Remedy::take_back;
    if (no_pieces) {
      finding.kind = FindingKind::wrong_quantity;
      finding.remedy = Remedy::replace_claim;
    } else if (finding.ours > 0) {
      finding.kind = FindingKind::wrong_quantity;
      finding.cause = Cause::billed_for_more;
      finding.remedy = Remedy::replace_claim;
      set_partner(one, j, finding);
    } else if (const Billed* first = first_time(one, j)) {
      const auto place = static_cast<std::size_t>(first - one.billed.data());
      finding.kind = FindingKind::duplicate;
      finding.cause = cause_of_second(one, billed, *first);
      finding.ours = paired_pieces(one, place);
      finding.theirs = first->quantity + billed.quantity;
      finding.other = first->line->claim_ref;
      set_partner(one, place, finding);
      finding.other_day = first->line->service_date;
      finding.evidence.claim_lines.push_back(first->position);
    }
    found.add(std::move(finding), line_key(*billed.line));
  }
}

}  // namespace sparewell::billing
