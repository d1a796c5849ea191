#include "billing/replacements.hpp"

#include <algorithm>

#include "billing/claim_findings.hpp"
#include "billing/papers.hpp"

namespace sparewell::billing {
namespace {

bool may_replace(const Unit& unit, const Unit& before) {
  if (before.side != unit.side || before.issued_on >= unit.issued_on || !before.ended_on)
    return false;
  const int gap = days_between(*before.ended_on, unit.issued_on);
  return gap >= 0 && gap <= days_to_replacement;
}

}  // namespace

std::vector<Replacement> replacements_of(const Clinic& clinic, const ClinicIndex& index,
                                         std::span<const std::size_t> units) {
  std::vector<Replacement> all;
  std::vector<const Item*> items;
  for (const std::size_t unit : units) items.push_back(index.item(clinic.units[unit].item));
  std::vector<bool> used(units.size(), false);
  for (std::size_t i = 0; i < units.size(); ++i) {
    if (items[i] == nullptr || items[i]->billing_code.empty()) continue;
    const Unit& unit = clinic.units[units[i]];
    std::size_t best = i;
    for (std::size_t j = 0; j < i; ++j) {
      const Unit& before = clinic.units[units[j]];
      if (used[j] || items[j] == nullptr || items[j]->kind != items[i]->kind ||
          items[j]->billing_code != items[i]->billing_code || !may_replace(unit, before)) {
        continue;
      }
      if (best == i || *before.ended_on > *clinic.units[units[best]].ended_on) best = j;
    }
    if (best == i) continue;
    used[best] = true;
    all.push_back({units[i], units[best]});
  }
  return all;
}

bool ended_unexplained(const Unit& unit, int within_days) {
  if (!unit.ended_on || days_between(unit.issued_on, *unit.ended_on) > within_days) return false;
  return !unit.end_reason || *unit.end_reason == EndReason::other;
}

void find_replaced_early(const BookRules& rules, const PatientCase& one,
                         std::span<const Replacement> replacements, FindingList& found) {
  for (const auto& [position, before] : replacements) {
    const Unit& unit = rules.clinic->units[position];
    const Unit& predecessor = rules.clinic->units[before];
    if (!rules.begin || unit.issued_on < *rules.begin) continue;
    const Item& item = *rules.index->item(unit.item);
    const auto payer = payer_of(rules, one, position);
    const auto* rule =
        rules.rules->find(PayerRuleKind::early, payer, item.billing_code, unit.issued_on);
    if (rule == nullptr || !rule->days || !ended_unexplained(predecessor, *rule->days)) continue;
    if (rules.papers->has(unit, "reason")) continue;
    BillingFinding finding;
    finding.kind = FindingKind::replaced_early;
    finding.patient = unit.patient;
    finding.side = unit.side;
    finding.payer = payer;
    finding.code = item.billing_code;
    finding.item = unit.item;
    finding.reference = claim_of(one, position);
    finding.since = unit.issued_on;
    finding.quantity = 1;
    finding.ours = 1;
    finding.money = negative(charged_for(one, {position}));
    finding.other_day = predecessor.ended_on;
    finding.other = predecessor.item.text;
    finding.cause = Cause::not_recorded;
    finding.remedy = Remedy::record_reason;
    finding.evidence.units = {position, before};
    found.add(std::move(finding),
              issue_key(unit.patient, unit.side, item.billing_code, unit.issued_on));
  }
}

}  // namespace sparewell::billing
