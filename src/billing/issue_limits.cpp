#include "billing/issue_limits.hpp"

#include <algorithm>

#include "billing/limits.hpp"
#include "billing/replacements.hpp"

namespace sparewell::billing {
namespace {

std::optional<PayerRule> within(const PayerRule* rule, int days_in_use) {
  if (rule == nullptr || !rule->days || days_in_use > *rule->days) return std::nullopt;
  return *rule;
}

/// The last that ended shortly before the day and has not been replaced.
std::optional<std::size_t> predecessor_of(const Clinic& clinic, const ClinicIndex& index,
                                          const std::vector<std::size_t>& units, Side side,
                                          const Item& item, Date day) {
  const auto replaced = replacements_of(clinic, index, units);
  std::optional<std::size_t> last;
  for (const std::size_t position : units) {
    const Unit& unit = clinic.units[position];
    const Item* other = index.item(unit.item);
    if (unit.side != side || !unit.ended_on || *unit.ended_on > day || unit.issued_on >= day ||
        days_between(*unit.ended_on, day) > days_to_replacement || other == nullptr ||
        other->kind != item.kind || other->billing_code != item.billing_code) {
      continue;
    }
    if (std::ranges::find(replaced, position, &Replacement::predecessor) != replaced.end())
      continue;
    if (!last || *unit.ended_on > *clinic.units[*last].ended_on) last = position;
  }
  return last;
}

ReplacedPart described(const RuleBook& rules, const std::string& payer, const std::string& code,
                       const Unit& unit, Date day) {
  ReplacedPart made;
  made.unit = unit;
  made.days_in_use = days_between(unit.issued_on, *unit.ended_on);
  made.early = within(rules.find(PayerRuleKind::early, payer, code, day), made.days_in_use);
  made.unexplained = !unit.end_reason || *unit.end_reason == EndReason::other;
  made.confirmation =
      within(rules.find(PayerRuleKind::confirmation, payer, code, day), made.days_in_use);
  for (const auto kind : {PayerRuleKind::paper, PayerRuleKind::replacement_paper}) {
    for (const auto* rule : rules.all(kind, payer, code, day)) made.papers.push_back(*rule);
  }
  return made;
}

}  // namespace

IssueLimits check_before_issue(const Clinic& clinic, const ClinicIndex& index,
                               const RuleBook& rules, const PatientRef& patient, Side side,
                               const Item& item, int quantity, Date day) {
  IssueLimits found;
  const std::string& code = item.billing_code;
  if (code.empty()) return found;
  const Patient* record = index.patient(patient);
  const std::string payer = record == nullptr ? "" : record->payer;
  const auto units = records_of_patient(clinic, patient).units;
  for (const auto& counted :
       count_limits(clinic, index, rules, units, side, code, payer, day, quantity)) {
    if (counted.over() > 0) found.over.push_back({*counted.rule, counted.allowed, counted.had});
  }
  const auto before = predecessor_of(clinic, index, units, side, item, day);
  if (before) found.replaced = described(rules, payer, code, clinic.units[*before], day);
  return found;
}

}  // namespace sparewell::billing
