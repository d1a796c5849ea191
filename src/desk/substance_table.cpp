#include "desk/substance_table.hpp"

#include <functional>
#include <span>

#include "desk/embedded_table.hpp"
#include "substance_texts.hpp"

namespace sparewell::desk {
namespace {

using Take = std::function<bool(std::span<const std::string>)>;

void for_each_row(std::string_view file, std::size_t columns, const Take& take) {
  for (std::size_t i = 0; i < substance_texts::embedded_text_count; ++i) {
    const auto& embedded = substance_texts::embedded_texts[i];
    if (embedded.name == file) for_each_table_row(file, embedded.text, columns, take);
  }
}

std::optional<care::Relation> relation_of(std::string_view text) {
  if (text == "is a") return care::Relation::is_a;
  if (text == "same as") return care::Relation::same_as;
  if (text == "may contain") return care::Relation::may_contain;
  return std::nullopt;
}

care::SubstanceTable read_table() {
  std::vector<care::SubstanceRow> rows;
  for_each_row("relations.csv", 4, [&](std::span<const std::string> cells) {
    const auto relation = relation_of(cells[1]);
    if (!relation || cells[0].empty() || cells[2].empty() || cells[3].empty()) return false;
    rows.push_back({cells[0], *relation, cells[2], cells[3]});
    return true;
  });
  care::SubstanceTable table;
  table.substances = care::Substances{rows};
  for_each_row("materials.csv", 3, [&](std::span<const std::string> cells) {
    const auto material = parse_word<Material>(cells[0]);
    if (!material || cells[2].empty() || !table.substances.knows(cells[1])) return false;
    table.contents.push_back({*material, cells[1], cells[2]});
    return true;
  });
  return table;
}

}  // namespace

const care::SubstanceTable& built_in_substances() {
  static const care::SubstanceTable table = read_table();
  return table;
}

}  // namespace sparewell::desk
