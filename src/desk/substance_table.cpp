#include "desk/substance_table.hpp"

#include <algorithm>
#include <functional>

#include "desk/embedded_table.hpp"
#include "substance_texts.hpp"

namespace sparewell::desk {
namespace {

using Cells = std::span<const std::string>;
using Take = std::function<bool(Cells)>;

void for_each_substance_row(std::string_view file, std::size_t columns, const Take& take) {
  for (std::size_t i = 0; i < substance_texts::embedded_text_count; ++i) {
    const auto& embedded = substance_texts::embedded_texts[i];
    if (embedded.name == file) for_each_table_row(file, embedded.text, columns, take);
  }
}

const std::vector<SubstanceRow>& built_in_rows() {
  static const std::vector<SubstanceRow> rows = [] {
    std::vector<SubstanceRow> made;
    for_each_substance_row("relations.csv", 4, [&](Cells cells) {
      const auto relation = parse_word<SubstanceRelation>(cells[1]);
      if (!relation || cells[0].empty() || cells[2].empty() || cells[3].empty()) return false;
      made.push_back({cells[0], *relation, cells[2], cells[3]});
      return true;
    });
    return made;
  }();
  return rows;
}

care::SubstanceTable table_of(const std::vector<SubstanceRow>& rows) {
  care::SubstanceTable table;
  table.substances = care::Substances{rows};
  for_each_substance_row("materials.csv", 3, [&](Cells cells) {
    const auto material = parse_word<Material>(cells[0]);
    if (!material || cells[2].empty() || !table.substances.knows(cells[1])) return false;
    table.contents.push_back({*material, cells[1], cells[2]});
    return true;
  });
  return table;
}

}  // namespace

const care::SubstanceTable& built_in_substances() {
  static const care::SubstanceTable table = table_of(built_in_rows());
  return table;
}

std::shared_ptr<const care::SubstanceTable> substances_of(const Clinic& clinic, Date day) {
  std::vector<SubstanceRow> rows;
  std::ranges::copy_if(clinic.substances, std::back_inserter(rows), [&](const SubstanceRow& row) {
    return !row.withdrawn_on || *row.withdrawn_on > day;
  });
  // What is built in lives as long as the program.
  if (rows.empty()) return {&built_in_substances(), [](const care::SubstanceTable*) {}};
  rows.insert(rows.begin(), built_in_rows().begin(), built_in_rows().end());
  return std::make_shared<care::SubstanceTable>(table_of(rows));
}

}  // namespace sparewell::desk
