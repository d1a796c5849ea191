#include "desk/suspension_table.hpp"

#include <algorithm>
#include <functional>

#include "desk/embedded_table.hpp"
#include "suspension_texts.hpp"

namespace sparewell::desk {
namespace {

using Cells = std::span<const std::string>;

void for_each_suspension_row(std::string_view file, std::size_t columns,
                  const std::function<bool(Cells)>& take) {
  // The last column is the source.
  const auto with_source = [&](Cells cells) { return !cells.back().empty() && take(cells); };
  for (std::size_t i = 0; i < suspension_texts::embedded_text_count; ++i) {
    const auto& embedded = suspension_texts::embedded_texts[i];
    if (embedded.name == file) for_each_table_row(file, embedded.text, columns, with_source);
  }
}

bool take_way(care::ChainRules& rules, Cells cells) {
  const auto suspension = parse_word<Suspension>(cells[0]);
  const auto function = parse_word<care::Function>(cells[2]);
  if (!suspension || !function || cells[1].empty()) return false;
  auto way = std::ranges::find_if(rules.ways, [&](const care::SuspensionWay& each) {
    return each.suspension == *suspension && each.way == cells[1];
  });
  if (way == rules.ways.end()) {
    rules.ways.push_back({*suspension, cells[1], {}, {}});
    way = std::prev(rules.ways.end());
  }
  if (cells[3] == "needed") {
    way->needed.push_back(*function);
  } else if (cells[3] == "allowed") {
    way->allowed.push_back(*function);
  } else {
    return false;
  }
  return true;
}

bool take_part(care::ChainRules& rules, Cells cells) {
  const auto function = parse_word<care::Function>(cells[0]);
  const auto kind = parse_word<Kind>(cells[1]);
  const auto attachment = parse_word<Attachment>(cells[2]);
  if (!function || !kind || (!attachment && !cells[2].empty())) return false;
  rules.parts.push_back({*function, *kind, attachment});
  return true;
}

bool take_materials(care::ChainRules& rules, Cells cells) {
  const auto kind = parse_word<Kind>(cells[0]);
  const auto material = parse_word<Material>(cells[1]);
  const auto other_kind = parse_word<Kind>(cells[2]);
  const auto other_material = parse_word<Material>(cells[3]);
  if (!kind || !material || !other_kind || !other_material || cells[4].empty()) return false;
  rules.materials.push_back(
      {*kind, *material, *other_kind, *other_material, cells[4], cells[5]});
  return true;
}

care::ChainRules read_rules() {
  care::ChainRules rules;
  for_each_suspension_row("ways.csv", 5, [&](Cells cells) { return take_way(rules, cells); });
  for_each_suspension_row("parts.csv", 4, [&](Cells cells) { return take_part(rules, cells); });
  for_each_suspension_row("threads.csv", 2, [&](Cells cells) {
    const auto function = parse_word<care::Function>(cells[0]);
    if (function) rules.threaded.push_back(*function);
    return function.has_value();
  });
  for_each_suspension_row("materials.csv", 6, [&](Cells cells) { return take_materials(rules, cells); });
  return rules;
}

}  // namespace

const care::ChainRules& built_in_chain_rules() {
  static const care::ChainRules rules = read_rules();
  return rules;
}

}  // namespace sparewell::desk
