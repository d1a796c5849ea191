#include "billing/code_likeness.hpp"

#include <algorithm>
#include <string_view>

namespace sparewell::billing {
namespace {

/// Whether the code stands as a word of its own in words such as "L5673 or L5679".
bool names(std::string_view words, std::string_view code) {
  constexpr std::string_view between{" ,;/"};
  while (!words.empty()) {
    const auto end = std::min(words.find_first_of(between), words.size());
    if (words.substr(0, end) == code) return true;
    words.remove_prefix(std::min(end + 1, words.size()));
  }
  return false;
}

}  // namespace

CodeLikeness::CodeLikeness(const Clinic& clinic, const CodeTable& codes, const RuleBook& rules)
    : codes_{&codes}, rules_{&rules} {
  for (const Item& item : clinic.items) {
    if (!item.billing_code.empty()) {
      kinds_[item.billing_code] |= 1U << static_cast<unsigned>(item.kind);
    }
  }
}

Likeness CodeLikeness::of(const std::string& of_part, Kind kind, const ClaimLine& line) const {
  if (of_part == line.code) return Likeness::same;
  const auto* initial =
      rules_->find(PayerRuleKind::initial_only, line.payer, line.code, line.service_date);
  if (initial != nullptr && names(initial->words, of_part)) return Likeness::initial;
  const auto found = kinds_.find(line.code);
  if (found != kinds_.end()) {
    const bool shared = (found->second >> static_cast<unsigned>(kind) & 1U) != 0;
    return shared ? Likeness::same_kind : Likeness::none;
  }
  const bool holds = codes_->find(line.code, line.service_date) != nullptr;
  return holds ? Likeness::none : Likeness::unknown;
}

}  // namespace sparewell::billing
