#include "desk/billing/adjustment_words.hpp"

#include <algorithm>
#include <map>

#include <fmt/format.h>

#include "billing_texts.hpp"
#include "clinic/say.hpp"
#include "desk/embedded_table.hpp"
#include "exchange/paid_rows.hpp"
#include "exchange/text.hpp"

namespace sparewell::desk {
namespace {

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

std::string_view adjustment_code_words(std::string_view code) {
  const auto known = words_of_codes().find(code);
  return known == words_of_codes().end() ? std::string_view{} : std::string_view{known->second};
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
      made += say("{} without a reason", words.empty() ? group : words);
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
