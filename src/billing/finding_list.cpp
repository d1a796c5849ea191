#include "billing/finding_list.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace sparewell::billing {
namespace {

void append(std::vector<std::size_t>& list, const std::vector<std::size_t>& more) {
  for (const std::size_t each : more) {
    if (std::ranges::find(list, each) == list.end()) list.push_back(each);
  }
}

}  // namespace

std::string issue_key(const PatientRef& patient, Side side, const std::string& code, Date day) {
  return fmt::format("{}/{}/{}/{}", patient.text, word(side), code, iso_text(day));
}

std::string line_key(const ClaimLine& line) {
  auto key = fmt::format("{}/{}/{}/{}/{}/{}", line.claim_ref, line.patient.text,
                         line.side ? word(*line.side) : "", iso_text(line.service_date), line.code,
                         fmt::join(line.modifiers, ";"));
  if (line.copy > 1) key += fmt::format("/{}", line.copy);
  return key;
}

void FindingList::add(BillingFinding finding, const std::string& of) {
  finding.key = fmt::format("{}/{}", finding_word(finding.kind), of);
  const auto [place, is_new] = by_key_.try_emplace(finding.key, finding);
  if (is_new) return;
  BillingFinding& known = place->second;
  known.quantity += finding.quantity;
  known.ours += finding.ours;
  known.theirs += finding.theirs;
  const bool addable =
      known.money && finding.money && known.money->currency == finding.money->currency;
  known.money = addable ? std::optional{*known.money + *finding.money} : std::nullopt;
  if (known.our_amount != finding.our_amount) known.our_amount.reset();
  if (known.their_amount != finding.their_amount) known.their_amount.reset();
  append(known.evidence.units, finding.evidence.units);
  append(known.evidence.claim_lines, finding.evidence.claim_lines);
}

std::vector<BillingFinding> FindingList::take() && {
  std::vector<BillingFinding> all;
  all.reserve(by_key_.size());
  for (auto& [key, finding] : by_key_) all.push_back(std::move(finding));
  return all;
}

}  // namespace sparewell::billing
