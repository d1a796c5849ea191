#include "billing/credits.hpp"

#include <algorithm>
#include <tuple>

#include "billing/supplier_match_findings.hpp"

namespace sparewell::billing {
namespace {

BillingFinding of_return(const Clinic& clinic, std::size_t at) {
  const SupplierReturn& sent = clinic.supplier_returns[at];
  BillingFinding finding;
  finding.kind = FindingKind::credit_due;
  finding.key = supplier_key(finding.kind, {sent.supplier.text, std::to_string(sent.number)});
  finding.item = sent.lot.item;
  finding.supplier = sent.supplier;
  finding.reference = sent.reference;
  finding.since = sent.sent_on;
  finding.quantity = finding.ours = sent.quantity;
  finding.money = sent.outstanding();
  finding.our_amount = sent.due;
  finding.their_amount = sent.credited;
  finding.other = sent.lot.lot;
  finding.remedy = Remedy::ask_supplier;
  finding.evidence.supplier_returns.push_back(at);
  return finding;
}

/// Parts of one lot that patients gave back in a recall and that were not sent on.
using Recalled = std::map<std::pair<ItemCode, std::string>, std::vector<std::size_t>>;

Recalled recalled_parts(const Clinic& clinic, Date today, const SupplierTerms& terms) {
  std::vector<std::size_t> ended;
  for (std::size_t at = 0; at < clinic.units.size(); ++at) {
    const Unit& unit = clinic.units[at];
    if (!unit.ended_on || unit.end_reason != EndReason::recall) continue;
    if (days_between(*unit.ended_on, today) <= terms.claim_days) ended.push_back(at);
  }
  sort_by_end(clinic, ended);
  SentBack sent{clinic};
  Recalled lots;
  for (const std::size_t at : ended) {
    const Unit& unit = clinic.units[at];
    if (!sent.take(unit, *unit.ended_on)) lots[{unit.item, unit.lot}].push_back(at);
  }
  return lots;
}

std::optional<BillingFinding> of_recall(const Clinic& clinic, const ClinicIndex& index,
                                        const std::vector<std::size_t>& units, Date today,
                                        const SupplierTerms& terms) {
  const Unit& first = clinic.units[units.front()];
  const Item* item = index.item(first.item);
  if (item == nullptr || days_between(*first.ended_on, today) <= terms.credit_days) {
    return std::nullopt;
  }
  BillingFinding finding;
  finding.kind = FindingKind::credit_due;
  finding.key = supplier_key(finding.kind, {"recall", first.item.text, first.lot});
  finding.item = first.item;
  finding.supplier = item->supplier;
  finding.since = *first.ended_on;
  finding.quantity = finding.ours = static_cast<int>(units.size());
  finding.our_amount = item->unit_cost;
  if (item->unit_cost) finding.money = *item->unit_cost * finding.quantity;
  finding.other = first.lot;
  finding.cause = Cause::not_recorded;
  finding.remedy = Remedy::ask_supplier;
  finding.evidence.units = units;
  return finding;
}

}  // namespace

void sort_by_end(const Clinic& clinic, std::vector<std::size_t>& units) {
  const auto place = [&](std::size_t at) {
    const Unit& unit = clinic.units[at];
    return std::tie(*unit.ended_on, unit.issued_on, unit.patient, unit.side, unit.item, unit.lot,
                    unit.serial, unit.copy);
  };
  std::ranges::sort(units, [&](std::size_t a, std::size_t b) { return place(a) < place(b); });
}

SentBack::SentBack(const Clinic& clinic) {
  for (const SupplierReturn& sent : clinic.supplier_returns) {
    by_lot_[{sent.lot.item, sent.lot.lot}].push_back({sent.sent_on, sent.quantity});
  }
  for (auto& [lot, pieces] : by_lot_) std::ranges::sort(pieces, {}, &Pieces::sent_on);
}

bool SentBack::take(const Unit& unit, Date since) {
  const auto found = by_lot_.find({unit.item, unit.lot});
  if (found == by_lot_.end()) return false;
  for (Pieces& pieces : found->second) {
    if (pieces.sent_on < since || pieces.quantity == 0) continue;
    --pieces.quantity;
    return true;
  }
  return false;
}

std::vector<BillingFinding> credit_findings(const Clinic& clinic, Date today,
                                            const SupplierTerms& terms) {
  std::vector<BillingFinding> findings;
  for (std::size_t at = 0; at < clinic.supplier_returns.size(); ++at) {
    const SupplierReturn& sent = clinic.supplier_returns[at];
    const auto outstanding = sent.outstanding();
    const bool is_owed = sent.is_open() && (!outstanding || outstanding->minor > 0);
    if (!is_owed || days_between(sent.sent_on, today) <= terms.credit_days) continue;
    findings.push_back(of_return(clinic, at));
  }
  const ClinicIndex index{clinic};
  for (const auto& [lot, units] : recalled_parts(clinic, today, terms)) {
    if (auto finding = of_recall(clinic, index, units, today, terms)) {
      findings.push_back(std::move(*finding));
    }
  }
  sort_findings(findings);
  return findings;
}

}  // namespace sparewell::billing
