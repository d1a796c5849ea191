#include "billing/warranty.hpp"

#include "billing/credits.hpp"
#include "billing/supplier_match_findings.hpp"

namespace sparewell::billing {
namespace {

bool ended_within_its_term(const Unit& unit, const Item* item) {
  if (item == nullptr || !item->warranty_days) return false;
  if (!unit.ended_on || !unit.end_reason || !is_wear(*unit.end_reason)) return false;
  return days_between(unit.issued_on, *unit.ended_on) <= *item->warranty_days;
}

BillingFinding warranty_finding(const Unit& unit, const Item& item) {
  BillingFinding finding;
  finding.kind = FindingKind::warranty_due;
  finding.key = supplier_key(
      finding.kind, {unit.patient.text, std::string{word(unit.side)}, unit.item.text, unit.lot,
                     unit.serial, iso_text(unit.issued_on), std::to_string(unit.copy)});
  finding.patient = unit.patient;
  finding.side = unit.side;
  finding.item = unit.item;
  finding.supplier = item.supplier;
  finding.reference = unit.lot;
  finding.since = *unit.ended_on;
  finding.other_day = unit.issued_on;
  finding.quantity = 1;
  finding.ours = days_between(unit.issued_on, *unit.ended_on);
  finding.theirs = *item.warranty_days;
  finding.money = finding.our_amount = item.unit_cost;
  finding.remedy = Remedy::claim_warranty;
  return finding;
}

}  // namespace

std::vector<BillingFinding> warranty_findings(
    const Clinic& clinic, Date today,
    const std::function<std::optional<double>(const Unit&)>& wear_age, const SupplierTerms& terms) {
  const ClinicIndex index{clinic};
  std::vector<std::size_t> ended;
  for (std::size_t at = 0; at < clinic.units.size(); ++at) {
    const Unit& unit = clinic.units[at];
    if (!ended_within_its_term(unit, index.item(unit.item))) continue;
    if (days_between(*unit.ended_on, today) <= terms.claim_days) ended.push_back(at);
  }
  sort_by_end(clinic, ended);
  SentBack sent{clinic};
  std::vector<BillingFinding> findings;
  for (const std::size_t at : ended) {
    const Unit& unit = clinic.units[at];
    if (sent.take(unit, *unit.ended_on)) continue;
    auto finding = warranty_finding(unit, *index.item(unit.item));
    finding.wear_age = wear_age(unit);
    finding.evidence.units.push_back(at);
    findings.push_back(std::move(finding));
  }
  sort_findings(findings);
  return findings;
}

}  // namespace sparewell::billing
