#include "billing/patient_case.hpp"

#include <algorithm>
#include <tuple>

#include "billing/money_shares.hpp"

namespace sparewell::billing {
namespace {

std::vector<Issue> issues_of(const BookRules& rules, const PatientRecords& records) {
  const Clinic& clinic = *rules.clinic;
  const Scope scope{clinic, records, rules.begin};
  std::map<std::tuple<Date, Side, std::string, ItemCode, Standing>, Issue> groups;
  for (const std::size_t position : records.units) {
    const Unit& unit = clinic.units[position];
    const Item* item = rules.index->item(unit.item);
    if (item == nullptr || item->billing_code.empty()) continue;
    const auto standing = scope.of(unit);
    if (!standing) continue;
    Issue& issue = groups[{unit.issued_on, unit.side, item->billing_code, unit.item, *standing}];
    if (issue.units.empty()) {
      issue = {unit.item, item->billing_code, item->kind, unit.side, unit.issued_on, *standing, {}};
    }
    issue.units.push_back(position);
  }
  std::vector<Issue> issues;
  issues.reserve(groups.size());
  for (auto& [place, issue] : groups) issues.push_back(std::move(issue));
  return issues;
}

void take_lines(const BookRules& rules, PatientCase& one) {
  auto net = net_claims(*rules.clinic, one.records.claim_lines);
  for (auto& live : net.live) {
    const ClaimLine& line = rules.clinic->claim_lines[live.line];
    const int early = rules.begin ? days_between(line.service_date, *rules.begin) : 0;
    if (early > ordinary_days) {
      if (live.charge) one.before_books[live.charge->currency] += live.charge->minor;
      continue;
    }
    one.billed.push_back(
        {live.line, &line, billed_side(line), live.quantity, std::move(live.charge), early > 0});
  }
  std::erase_if(net.loose, [&](const LooseReversal& loose) {
    return rules.begin && rules.clinic->claim_lines[loose.line].service_date < *rules.begin;
  });
  one.loose = std::move(net.loose);
  one.amounts = std::move(net.amounts);
}

/// Shares each line's charge over its pairs and what is left.
void share_charges(PatientCase& one) {
  std::vector<std::vector<int>> parts(one.billed.size());
  for (const auto& pair : one.pairs) parts[pair.pieces.billed].push_back(pair.pieces.quantity);
  std::vector<std::vector<std::int64_t>> amounts(one.billed.size());
  for (std::size_t j = 0; j < one.billed.size(); ++j) {
    const Billed& billed = one.billed[j];
    int left = billed.quantity;
    for (const int part : parts[j]) left -= part;
    one.pieces_left.push_back(left);
    parts[j].push_back(left);
    one.money_left.emplace_back();
    if (!billed.charge) continue;
    amounts[j] = shares(billed.charge->minor, parts[j]);
    one.money_left[j] = Money{amounts[j].back(), billed.charge->currency};
  }
  std::vector<std::size_t> next(one.billed.size(), 0);
  for (auto& pair : one.pairs) {
    const std::size_t j = pair.pieces.billed;
    if (const auto& charge = one.billed[j].charge) {
      pair.money = Money{amounts[j][next[j]++], charge->currency};
    }
  }
}

void name_units(PatientCase& one) {
  for (const auto& issue : one.issues) one.units_left.push_back(issue.units);
  for (auto& pair : one.pairs) {
    auto& left = one.units_left[pair.pieces.issue];
    const auto end = left.begin() + pair.pieces.quantity;
    pair.units.assign(left.begin(), end);
    left.erase(left.begin(), end);
    const std::vector<int> ones(pair.units.size(), 1);
    std::vector<std::int64_t> each;
    if (pair.money) each = shares(pair.money->minor, ones);
    for (std::size_t i = 0; i < pair.units.size(); ++i) {
      auto& charge = one.of_unit[pair.units[i]];
      charge.billed = pair.pieces.billed;
      if (pair.money) charge.money = Money{each[i], pair.money->currency};
    }
  }
}

}  // namespace

PatientCase make_case(const BookRules& rules, PatientRecords records) {
  PatientCase one;
  one.records = std::move(records);
  one.issues = issues_of(rules, one.records);
  take_lines(rules, one);
  for (const auto& pieces : pair_pieces(one.issues, one.billed, *rules.likeness)) {
    one.pairs.push_back({pieces, {}, std::nullopt});
  }
  share_charges(one);
  name_units(one);
  return one;
}

std::optional<Money> charged_for(const PatientCase& one, const std::vector<std::size_t>& units) {
  std::optional<Money> sum;
  for (const std::size_t unit : units) {
    const auto found = one.of_unit.find(unit);
    if (found == one.of_unit.end() || !found->second.money) continue;
    const Money& money = *found->second.money;
    if (sum && sum->currency != money.currency) return std::nullopt;
    sum = sum ? *sum + money : money;
  }
  return sum;
}

std::string payer_of(const BookRules& rules, const PatientCase& one, std::size_t unit) {
  const auto found = one.of_unit.find(unit);
  const std::string none;
  return payer_or_patients(
      rules, found == one.of_unit.end() ? none : one.billed[found->second.billed].line->payer,
      one.records.patient);
}

std::string claim_of(const PatientCase& one, std::size_t unit) {
  const auto found = one.of_unit.find(unit);
  return found == one.of_unit.end() ? "" : one.billed[found->second.billed].line->claim_ref;
}

void complete_evidence(const PatientCase& one, BillingFinding& finding) {
  auto& [units, lines, remitted, ordered, invoiced, returned] = finding.evidence;
  if (lines.empty()) {
    for (const std::size_t unit : units) {
      const auto found = one.of_unit.find(unit);
      if (found == one.of_unit.end()) continue;
      const std::size_t line = one.billed[found->second.billed].position;
      if (std::ranges::find(lines, line) == lines.end()) lines.push_back(line);
    }
  } else if (units.empty()) {
    for (const auto& pair : one.pairs) {
      if (std::ranges::find(lines, one.billed[pair.pieces.billed].position) == lines.end())
        continue;
      units.insert(units.end(), pair.units.begin(), pair.units.end());
    }
  }
}

std::string payer_or_patients(const BookRules& rules, const std::string& payer,
                              const PatientRef& patient) {
  if (!payer.empty()) return payer;
  const Patient* record = rules.index->patient(patient);
  return record == nullptr ? "" : record->payer;
}

}  // namespace sparewell::billing
