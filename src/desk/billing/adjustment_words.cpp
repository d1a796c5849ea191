#include "desk/billing/adjustment_words.hpp"

#include <algorithm>
#include <array>
#include <map>

#include <fmt/format.h>

#include "billing_texts.hpp"
#include "clinic/say.hpp"
#include "desk/embedded_table.hpp"
#include "exchange/paid_rows.hpp"
#include "exchange/text.hpp"

namespace sparewell::desk {
namespace {

/// The words of adjustment_reasons.csv, so that the catalogue of texts holds them.
[[maybe_unused]] constexpr std::array words_to_translate{
    to_say("what the contract does not let the clinic charge"),
    to_say("the patient's share"),
    to_say("another adjustment"),
    to_say("the payer's own decision"),
    to_say("a correction of an earlier answer"),
    to_say("deductible"),
    to_say("coinsurance"),
    to_say("co-payment"),
    to_say("information is missing or wrong"),
    to_say("an exact duplicate of an earlier claim"),
    to_say("what another payer has settled"),
    to_say("sent after the time limit"),
    to_say("above the fee schedule or what is allowed"),
    to_say("above the fee schedule or what was agreed"),
    to_say("not held to be medically necessary"),
    to_say("not covered"),
    to_say("included in the payment for another service"),
    to_say("not covered by this payer"),
    to_say("the benefit for this period is used up"),
    to_say("a discount that was agreed"),
    to_say("more pieces or more often than the records support"),
    to_say("no authorization was asked for beforehand"),
    to_say("a cut by law of every payment")};

using Words = std::map<std::string, std::string, std::less<>>;

const Words& words_of_codes() {
  static const Words words = [] {
    Words made;
    for (std::size_t i = 0; i < billing_texts::embedded_text_count; ++i) {
      const auto& embedded = billing_texts::embedded_texts[i];
      if (embedded.name != "adjustment_reasons.csv") continue;
      for_each_table_row(embedded.name, embedded.text, 3, [&](std::span<const std::string> cells) {
        return !cells[2].empty() && made.emplace(cells[0], cells[1]).second;
      });
    }
    return made;
  }();
  return words;
}

}  // namespace

std::string adjustment_code_words(std::string_view code) {
  const auto known = words_of_codes().find(code);
  return known == words_of_codes().end() ? "" : said(known->second.c_str());
}

std::string adjustment_words(std::string_view reasons) {
  std::string made;
  while (!reasons.empty()) {
    const auto end = std::min(reasons.find(';'), reasons.size());
    const auto each = exchange::trimmed(reasons.substr(0, end));
    reasons.remove_prefix(std::min(end + 1, reasons.size()));
    const auto cut = std::min(each.find(':'), each.size());
    const auto group = each.substr(0, cut);
    const auto reason = each.substr(std::min(cut + 1, each.size()));
    if (!made.empty()) made += "; ";
    if (reason == exchange::unstated_reason) {
      const auto words = adjustment_code_words(group);
      made += say("{} without a reason", words.empty() ? std::string{group} : words);
      continue;
    }
    made += reason.empty() ? std::string{group} : fmt::format("{} {}", group, reason);
    if (const auto words = adjustment_code_words(reason); !words.empty()) {
      made += fmt::format(", {}", words);
    }
  }
  return made;
}

}  // namespace sparewell::desk
