#include "billing/papers.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "billing/claim_findings.hpp"

namespace sparewell::billing {
namespace {

bool papers_kept(const BookRules& rules, const Unit& unit) {
  const auto& begin = rules.clinic->settings.papers_begin;
  return begin && *begin <= unit.issued_on;
}

BillingFinding about_unit(const BookRules& rules, const PatientCase& one, FindingKind kind,
                          const Issue& issue, std::size_t unit) {
  auto finding = finding_of_issue(kind, one.records.patient, issue);
  finding.payer = payer_of(rules, one, unit);
  finding.reference = claim_of(one, unit);
  finding.quantity = 1;
  finding.ours = 1;
  finding.money = negative(charged_for(one, {unit}));
  finding.cause = Cause::not_recorded;
  finding.evidence.units = {unit};
  return finding;
}

/// The names of the papers that are to be on file for this part.
std::vector<std::string> wanted_papers(const BookRules& rules, const std::string& payer,
                                       const Issue& issue, const Unit& unit, bool replaces) {
  std::vector<std::string> wanted;
  const auto take = [&](PayerRuleKind kind) {
    for (const auto* rule : rules.rules->all(kind, payer, issue.code, issue.day)) {
      const bool of_cost = rule->words == "cost share";
      if (of_cost && !rules.papers->reason_is_cost(unit)) continue;
      if (std::ranges::find(wanted, rule->words) == wanted.end()) wanted.push_back(rule->words);
    }
  };
  take(PayerRuleKind::paper);
  if (replaces) take(PayerRuleKind::replacement_paper);
  return wanted;
}

}  // namespace

PaperFiles::PaperFiles(const Clinic& clinic) {
  for (const auto& paper : clinic.part_papers) papers_[paper.patient].push_back(&paper);
  for (const auto& each : clinic.handovers) handovers_[each.patient].push_back(&each);
}

bool PaperFiles::has(const Unit& unit, std::string_view paper) const {
  const auto found = papers_.find(unit.patient);
  if (found == papers_.end()) return false;
  return std::ranges::any_of(found->second, [&](const PartPaper* each) {
    return each->paper == paper && each->is_of(unit);
  });
}

bool PaperFiles::reason_is_cost(const Unit& unit) const {
  const auto found = papers_.find(unit.patient);
  if (found == papers_.end()) return false;
  return std::ranges::any_of(found->second, [&](const PartPaper* each) {
    return each->paper == "reason" && each->is_of(unit) &&
           each->words.find("cost") != std::string::npos;
  });
}

const Handover* PaperFiles::handover_of(const Unit& unit) const {
  const auto found = handovers_.find(unit.patient);
  if (found == handovers_.end()) return nullptr;
  const auto is_of = [&](const Handover* each) { return each->is_of(unit); };
  const auto each = std::ranges::find_if(found->second, is_of);
  return each == found->second.end() ? nullptr : *each;
}

void find_missing_papers(const BookRules& rules, const PatientCase& one,
                         std::span<const Replacement> replacements, FindingList& found) {
  for (const auto& issue : one.issues) {
    if (issue.standing != Standing::expected) continue;
    for (const std::size_t position : issue.units) {
      const Unit& unit = rules.clinic->units[position];
      if (!papers_kept(rules, unit)) continue;
      const bool replaces =
          std::ranges::find(replacements, position, &Replacement::unit) != replacements.end();
      const auto payer = payer_of(rules, one, position);
      for (const auto& paper : wanted_papers(rules, payer, issue, unit, replaces)) {
        if (rules.papers->has(unit, paper)) continue;
        auto finding = about_unit(rules, one, FindingKind::paper_missing, issue, position);
        finding.other = paper;
        finding.remedy = Remedy::file_paper;
        const auto key = issue_key(unit.patient, issue.side, issue.code, issue.day);
        found.add(std::move(finding), fmt::format("{}/{}", key, paper));
      }
    }
  }
}

void find_missing_proofs(const BookRules& rules, const PatientCase& one, FindingList& found) {
  for (const auto& issue : one.issues) {
    if (issue.standing != Standing::expected ||
        days_between(issue.day, rules.today) < days_to_sign) {
      continue;
    }
    for (const std::size_t position : issue.units) {
      const Unit& unit = rules.clinic->units[position];
      const auto* handover = rules.papers->handover_of(unit);
      if (handover == nullptr ? !papers_kept(rules, unit) : handover->signed_on.has_value())
        continue;
      auto finding = about_unit(rules, one, FindingKind::no_proof_of_delivery, issue, position);
      // One sheet stands for all that was handed over on a day.
      finding.side.reset();
      finding.code.clear();
      finding.item = {};
      finding.remedy = Remedy::get_signature;
      found.add(std::move(finding), fmt::format("{}/{}", unit.patient.text, iso_text(issue.day)));
    }
  }
}

}  // namespace sparewell::billing
