#include "billing/limits.hpp"

#include <algorithm>
#include <set>
#include <tuple>

#include <fmt/format.h>

#include "billing/claim_findings.hpp"

namespace sparewell::billing {
namespace {

/// Pieces of one code handed out on one day for one side.
using Day = std::tuple<Date, Side, std::string>;

void add_over(const BookRules& rules, const PatientCase& one, const Day& place,
              const std::vector<std::size_t>& units, const Counted& counted, FindingList& found) {
  const auto& [day, side, code] = place;
  BillingFinding finding;
  finding.kind = FindingKind::over_limit;
  finding.patient = one.records.patient;
  finding.side = side;
  finding.payer = payer_of(rules, one, units.back());
  finding.code = code;
  finding.item = rules.clinic->units[units.back()].item;
  finding.reference = claim_of(one, units.back());
  finding.since = day;
  finding.quantity = std::min(counted.over(), static_cast<int>(units.size()));
  finding.ours = counted.allowed;
  finding.theirs = counted.had;
  // The last ones are those beyond it.
  const std::vector<std::size_t> beyond{units.end() - finding.quantity, units.end()};
  finding.money = negative(charged_for(one, beyond));
  finding.other = word(counted.rule->rule);
  finding.remedy = Remedy::take_back;
  finding.evidence.units = counted.units;
  found.add(std::move(finding),
            fmt::format("{}/{}", issue_key(one.records.patient, side, code, day),
                        word(counted.rule->rule)));
}

/// The day of delivery of the prosthesis worn on that side then, as far as it is recorded.
std::optional<Date> prosthesis_of(const Clinic& clinic, const PatientRecords& records,
                                  const Billed& billed) {
  std::optional<Date> latest;
  for (const std::size_t position : records.prostheses) {
    const Prosthesis& each = clinic.prostheses[position];
    if (billed.side && each.side != *billed.side) continue;
    if (days_between(each.delivered_on, billed.line->service_date) < -ordinary_days) continue;
    latest = each.delivered_on;  // they come by day of delivery
  }
  return latest;
}

void find_initial_again(const BookRules& rules, const PatientCase& one, FindingList& found) {
  std::map<std::tuple<std::string, std::optional<Side>, std::optional<Date>>, int> had;
  for (const auto& billed : one.billed) {
    const ClaimLine& line = *billed.line;
    const auto payer = payer_or_patients(rules, line.payer, line.patient);
    const auto* rule =
        rules.rules->find(PayerRuleKind::initial_only, payer, line.code, line.service_date);
    if (rule == nullptr || billed.quantity == 0) continue;
    int& pieces = had[{line.code, billed.side, prosthesis_of(*rules.clinic, one.records, billed)}];
    const int allowed = rule->number.value_or(1);
    const int before = std::min(pieces, allowed);
    pieces += billed.quantity;
    const int over = std::min(pieces - allowed, billed.quantity);
    if (over <= 0 || billed.before_books || allowed - before >= billed.quantity) continue;
    auto finding = finding_of_line(rules, FindingKind::over_limit, billed);
    finding.quantity = over;
    finding.ours = allowed;
    finding.theirs = pieces;
    finding.their_amount = billed.charge;
    finding.other = rule->words;
    finding.cause = Cause::code_mistaken;
    finding.remedy = Remedy::replace_claim;
    found.add(std::move(finding), fmt::format("{}/{}", line_key(line), word(rule->rule)));
  }
}

}  // namespace

std::vector<Counted> count_limits(const Clinic& clinic, const ClinicIndex& index,
                                  const RuleBook& rules, std::span<const std::size_t> units,
                                  Side side, const std::string& code, const std::string& payer,
                                  Date day, int more) {
  std::vector<Counted> all;
  const auto count = [&](const PayerRule* rule, const auto& counts) {
    Counted counted{rule, *rule->number, more};
    for (const std::size_t position : units) {
      const Unit& unit = clinic.units[position];
      if (unit.side != side || unit.issued_on > day || !counts(unit)) continue;
      const Item* item = index.item(unit.item);
      if (item == nullptr || item->billing_code != code) continue;
      ++counted.had;
      counted.units.push_back(position);
    }
    all.push_back(std::move(counted));
  };
  const auto* at_once = rules.find(PayerRuleKind::at_once, payer, code, day);
  if (at_once != nullptr && at_once->number) {
    count(at_once, [&](const Unit& unit) { return unit.in_use_on(day); });
  }
  const auto* period = rules.find(PayerRuleKind::in_period, payer, code, day);
  if (period != nullptr && period->number && period->days) {
    const Date first = day - days{*period->days - 1};
    count(period, [&](const Unit& unit) { return unit.issued_on >= first; });
  }
  return all;
}

void find_over_limit(const BookRules& rules, const PatientCase& one, FindingList& found) {
  std::map<Day, std::vector<std::size_t>> handed;
  for (const auto& issue : one.issues) {
    if (issue.standing != Standing::expected) continue;
    auto& units = handed[{issue.day, issue.side, issue.code}];
    units.insert(units.end(), issue.units.begin(), issue.units.end());
  }
  for (const auto& [place, units] : handed) {
    const auto& [day, side, code] = place;
    const auto payer = payer_of(rules, one, units.back());
    for (const auto& counted : count_limits(*rules.clinic, *rules.index, *rules.rules,
                                            one.records.units, side, code, payer, day)) {
      if (counted.over() > 0) add_over(rules, one, place, units, counted, found);
    }
  }
  find_initial_again(rules, one, found);
}

}  // namespace sparewell::billing
