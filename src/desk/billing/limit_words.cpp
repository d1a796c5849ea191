#include "desk/billing/limit_words.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/billing/paper_noting.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using care::Gravity;

std::string rule_payer_words(const PayerRule& rule, const std::string& payer) {
  if (!rule.payer.empty()) return rule.payer;
  return payer.empty() ? said("the rule for every payer") : say("the rule for {}", payer);
}

IssueFinding over_finding(const billing::LimitReached& reached, const Item& item, Side side,
                          const std::string& payer) {
  const auto& rule = reached.rule;
  const bool at_once = rule.rule == PayerRuleKind::at_once;
  const auto had =
      at_once ? say("{} of {} would be in use at once on the {}", reached.had, item.billing_code,
                    shown_word(side))
              : say("{} of {} would have been handed out for the {} within {} days", reached.had,
                    item.billing_code, shown_word(side), rule.days.value_or(0));
  const auto then = at_once ? said(
                                  "Record first which one has ended, or ask the payer before it is "
                                  "billed.")
                            : said("Ask the payer before it is billed.");
  return {"over_limit", Gravity::ask, true,
          say("With this, {}; {} allows {}. {} Source of the limit: {}.", had,
              rule_payer_words(rule, payer), reached.allowed, then, rule.source)};
}

/// "an order, a note of the condition and the cost share"; empty when none is asked for.
std::string papers_words(const std::vector<PayerRule>& rules) {
  std::vector<std::string> papers;
  for (const auto& rule : rules) {
    const auto paper = rule.words == "cost share"
                           ? std::string{said("the cost of the repair where that is the reason")}
                           : fmt::format("\"{}\"", shown_paper(rule.words));
    if (std::ranges::find(papers, paper) == papers.end()) papers.push_back(paper);
  }
  return list_words(papers);
}

/// "It replaces L1 of 3 Aug 2026, which ended on 25 Nov 2026 after 114 days".
std::string replaces_words(const billing::ReplacedPart& replaced) {
  const Unit& unit = replaced.unit;
  return say("It replaces {} of {}, which ended on {} after {}", unit.item.text,
             date_words(unit.issued_on), date_words(*unit.ended_on),
             count_words(replaced.days_in_use, "day", "days"));
}

/// Which papers are kept with a replacement, and until when the payer may ask.
std::string keeping_words(const billing::ReplacedPart& replaced) {
  std::string words;
  const auto papers = papers_words(replaced.papers);
  if (!papers.empty()) words += say(" Papers to keep: {}.", papers);
  if (replaced.confirmation) {
    words += say(" Below {} days the payer may ask to confirm the need.",
                 number_words(replaced.confirmation->days.value_or(0)));
  }
  return words;
}

IssueFinding early_finding(const billing::ReplacedPart& replaced) {
  const int days = replaced.early->days.value_or(0);
  auto words =
      replaced.unexplained
          ? say("{}; below {} days a replacement needs a reason, and none is recorded. "
                "Grounds that payers know are a change in the patient's condition, a part that "
                "cannot be repaired, and a repair above 60 % of the replacement's cost; note "
                "which one it is.",
                replaces_words(replaced), days)
          : say("{}; below {} days a replacement needs a reason: {} is recorded.",
                replaces_words(replaced), days, shown_word(*replaced.unit.end_reason));
  words += say("{} Source of the term: {}.", keeping_words(replaced), replaced.early->source);
  return {"early_replacement", replaced.unexplained ? Gravity::ask : Gravity::note, true, words};
}

/// Of a part that lasted longer, and yet not as long as the payer may ask about.
IssueFinding replacement_finding(const billing::ReplacedPart& replaced) {
  const auto reason = replaced.unexplained
                          ? std::string{said("no reason is recorded")}
                          : say("{} is recorded", shown_word(*replaced.unit.end_reason));
  return {"replacement", Gravity::note, true,
          say("{}; {}.{} Source of the term: {}.", replaces_words(replaced), reason,
              keeping_words(replaced), replaced.confirmation->source)};
}

}  // namespace

std::vector<IssueFinding> limit_findings(const billing::IssueLimits& limits, const Item& item,
                                         Side side, const std::string& payer) {
  std::vector<IssueFinding> found;
  for (const auto& reached : limits.over) {
    found.push_back(over_finding(reached, item, side, payer));
  }
  if (limits.replaced && limits.replaced->early) {
    found.push_back(early_finding(*limits.replaced));
  } else if (limits.replaced && limits.replaced->confirmation) {
    found.push_back(replacement_finding(*limits.replaced));
  }
  return found;
}

}  // namespace sparewell::desk
