#include "billing/reconcile_claims.hpp"

#include <algorithm>
#include <iterator>
#include <map>

#include "billing/claim_findings.hpp"
#include "billing/leftovers.hpp"
#include "billing/limits.hpp"
#include "billing/other_patient.hpp"
#include "billing/papers.hpp"
#include "billing/replacements.hpp"
#include "clinic/in_parallel.hpp"

namespace sparewell::billing {
namespace {

std::vector<BillingFinding> findings_of(const BookRules& rules, const UsualCharges& usual,
                                        const PatientCase& one) {
  FindingList found;
  const auto replacements = replacements_of(*rules.clinic, *rules.index, one.records.units);
  find_in_pairs(rules, one, found);
  find_unbilled(rules, usual, one, found);
  find_unissued(rules, one, found);
  find_in_lines(rules, usual, one, found);
  find_over_limit(rules, one, found);
  find_replaced_early(rules, one, replacements, found);
  find_missing_papers(rules, one, replacements, found);
  find_missing_proofs(rules, one, found);
  return std::move(found).take();
}

PairedPieces described(const PatientCase& one, const Pair& pair) {
  const Issue& issue = one.issues[pair.pieces.issue];
  const Billed& billed = one.billed[pair.pieces.billed];
  PairedPieces made;
  made.units = pair.units;
  made.claim_line = billed.position;
  made.agreement = pair.pieces.agreement;
  made.days_apart = days_between(issue.day, billed.line->service_date);
  made.part_of_line = pair.pieces.quantity < billed.quantity;
  made.part_of_issue = pair.units.size() < issue.units.size();
  made.money = pair.money;
  return made;
}

class Totals {
 public:
  void add(const PatientCase& one) {
    for (const auto& [currency, amounts] : one.amounts) {
      BookTotals& total = of(currency);
      total.charged += amounts.charged;
      total.replaced += amounts.replaced;
      total.reversed += amounts.reversed;
    }
    for (const auto& [currency, amount] : one.before_books) of(currency).before_books += amount;
    for (const auto& pair : one.pairs) {
      if (pair.money) of(pair.money->currency).paired += pair.money->minor;
    }
    for (const auto& left : one.money_left) {
      if (left) of(left->currency).alone += left->minor;
    }
  }

  [[nodiscard]] std::vector<BookTotals> take() const {
    std::vector<BookTotals> all;
    for (const auto& [currency, total] : by_currency_) all.push_back(total);
    return all;
  }

 private:
  BookTotals& of(const Currency& currency) {
    BookTotals& total = by_currency_[currency];
    total.currency = currency;
    return total;
  }

  std::map<Currency, BookTotals> by_currency_;
};

/// A code that stands in no list is one finding, however often it is billed.
void join_unknown_codes(const CodeTable& codes, std::vector<BillingFinding>& findings) {
  FindingList joined;
  std::map<std::string, std::vector<BillingFinding>> by_code;
  std::erase_if(findings, [&](BillingFinding& finding) {
    const bool unknown = finding.kind == FindingKind::code_not_valid && !codes.knows(finding.code);
    if (unknown) by_code[finding.code].push_back(std::move(finding));
    return unknown;
  });
  for (auto& [code, list] : by_code) {
    const auto first = std::ranges::min_element(list, {}, &BillingFinding::since);
    std::iter_swap(list.begin(), first);
    const bool one_patient = std::ranges::all_of(
        list, [&](const auto& each) { return each.patient == list.front().patient; });
    if (!one_patient) {
      list.front().patient = {};
      list.front().side.reset();
    }
    for (auto& each : list) joined.add(std::move(each), code);
  }
  std::ranges::move(std::move(joined).take(), std::back_inserter(findings));
}

}  // namespace

ClaimBooks reconcile_claims(const Clinic& clinic, const CodeTable& codes, const RuleBook& rules,
                            Date today) {
  const ClinicIndex index{clinic};
  const CodeLikeness likeness{clinic, codes, rules};
  const PaperFiles papers{clinic};
  const BookRules looked_at{
      &clinic, &index, &codes, &rules, &likeness, &papers, books_begin(clinic), today};
  auto records = records_of_patients(clinic);
  std::vector<PatientCase> cases(records.size());
  in_parallel(records.size(),
              [&](std::size_t i) { cases[i] = make_case(looked_at, std::move(records[i])); });
  const UsualCharges usual{looked_at, cases};
  std::vector<std::vector<BillingFinding>> findings(cases.size());
  std::vector<std::vector<Leftover>> leftovers(cases.size());
  in_parallel(cases.size(), [&](std::size_t i) {
    findings[i] = findings_of(looked_at, usual, cases[i]);
    for (BillingFinding& finding : findings[i]) complete_evidence(cases[i], finding);
    add_leftovers(looked_at, cases[i], leftovers[i]);
  });
  ClaimBooks books;
  Totals totals;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    std::ranges::move(findings[i], std::back_inserter(books.findings));
    std::ranges::move(leftovers[i], std::back_inserter(books.leftovers));
    for (const auto& pair : cases[i].pairs) books.pairs.push_back(described(cases[i], pair));
    totals.add(cases[i]);
  }
  join_unknown_codes(codes, books.findings);
  name_other_patients(cases, books.findings);
  sort_findings(books.findings);
  books.totals = totals.take();
  return books;
}

}  // namespace sparewell::billing
