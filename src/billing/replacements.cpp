#include "billing/replacements.hpp"

#include <algorithm>
#include <iterator>

#include "billing/claim_findings.hpp"
#include "billing/papers.hpp"

namespace sparewell::billing {
namespace {

/// Days from the end of the one to the issue of the other where that may replace it.
std::optional<int> gap(const Clinic& clinic, const ClinicIndex& index, std::size_t unit_at,
                       std::size_t before_at) {
  const Unit& unit = clinic.units[unit_at];
  const Unit& before = clinic.units[before_at];
  if (before.side != unit.side || !before.ended_on || before.issued_on >= unit.issued_on ||
      *before.ended_on > unit.issued_on) {
    return std::nullopt;
  }
  if (before.item != unit.item) {
    const Item* item = index.item(unit.item);
    const Item* other = index.item(before.item);
    if (item == nullptr || other == nullptr || item->kind != other->kind ||
        item->billing_code != other->billing_code) {
      return std::nullopt;
    }
  }
  return days_between(*before.ended_on, unit.issued_on);
}

bool is_billed(const ClinicIndex& index, const Unit& unit) {
  const Item* item = index.item(unit.item);
  return item != nullptr && !item->billing_code.empty();
}

}  // namespace

std::vector<Replacement> replacements_of(const Clinic& clinic, const ClinicIndex& index,
                                         std::span<const std::size_t> units) {
  std::vector<Replacement> all;
  std::vector<bool> used(units.size(), false);
  for (std::size_t i = 0; i < units.size(); ++i) {
    if (!is_billed(index, clinic.units[units[i]])) continue;
    std::size_t best = i;
    int shortest = days_to_replacement + 1;
    for (std::size_t j = 0; j < i; ++j) {
      if (used[j]) continue;
      const auto days_after = gap(clinic, index, units[i], units[j]);
      if (!days_after || *days_after >= shortest) continue;
      best = j;
      shortest = *days_after;
    }
    if (best == i) continue;
    used[best] = true;
    all.push_back({units[i], units[best]});
  }
  return all;
}

std::vector<Replacement> made_up_later(const Clinic& clinic, const ClinicIndex& index,
                                       std::span<const std::size_t> units,
                                       std::span<const Replacement> replacements) {
  std::vector<Replacement> more;
  const auto stands = [&](std::size_t Replacement::*which, std::size_t unit) {
    return std::ranges::find(replacements, unit, which) != replacements.end() ||
           std::ranges::find(more, unit, which) != more.end();
  };
  for (const std::size_t before : units) {
    const Unit& ended = clinic.units[before];
    if (!ended_unexplained(ended, days_to_make_up) || !is_billed(index, ended) ||
        stands(&Replacement::predecessor, before)) {
      continue;
    }
    for (const std::size_t unit : units) {
      const auto days_after = gap(clinic, index, unit, before);
      if (!days_after || *days_after > days_to_make_up || stands(&Replacement::unit, unit))
        continue;
      more.push_back({unit, before});
      break;
    }
  }
  return more;
}

bool ended_unexplained(const Unit& unit, int within_days) {
  if (!unit.ended_on || days_between(unit.issued_on, *unit.ended_on) > within_days) return false;
  return !unit.end_reason || *unit.end_reason == EndReason::other;
}

void find_replaced_early(const BookRules& rules, const PatientCase& one,
                         std::span<const Replacement> replacements, FindingList& found) {
  std::vector<Replacement> all{replacements.begin(), replacements.end()};
  std::ranges::copy(made_up_later(*rules.clinic, *rules.index, one.records.units, replacements),
                    std::back_inserter(all));
  for (const auto& [position, before] : all) {
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
    finding.theirs = days_between(predecessor.issued_on, *predecessor.ended_on);
    finding.money = negative(charged_for(one, {position}));
    finding.other_day = predecessor.ended_on;
    finding.other = predecessor.item.text;
    finding.cause = Cause::not_recorded;
    finding.remedy = Remedy::record_reason;
    finding.evidence.units = {before, position};
    found.add(std::move(finding),
              issue_key(unit.patient, unit.side, item.billing_code, unit.issued_on));
  }
}

}  // namespace sparewell::billing
