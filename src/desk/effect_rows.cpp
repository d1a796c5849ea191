#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/effect_words.hpp"
#include "desk/part_words.hpp"
#include "desk/wear_page.hpp"
#include "desk/wear_rows.hpp"
#include "desk/wording.hpp"
#include "wear/effects.hpp"

namespace sparewell::desk {
namespace {

Cell ratio_cell(double ratio) {
  return {say("{:.2f}", ratio), ratio};
}

TableRow grounds_row(const wear::KindLife& life) {
  TableRow row;
  row.id = kind_id(life.kind);
  row.marks = kind_mark(life.kind);
  row.strong = true;
  row.cells = {{kind_title(life.kind), std::nullopt}, {effect_grounds(life), std::nullopt}};
  row.cells.resize(effect_columns().size());
  return row;
}

TableRow effect_row(const wear::KindLife& life, const wear::FactorEffect& effect) {
  TableRow row;
  row.id = fmt::format("{} {}", kind_id(life.kind), wear::factor_name(effect.factor));
  row.marks = kind_mark(life.kind);
  row.cells = {{kind_title(life.kind), std::nullopt},
               {capitalised(effect_words(life.kind, effect)), std::nullopt},
               effect.is_clear() ? ratio_cell(effect.ratio) : Cell{said("not clear"), std::nullopt},
               ratio_cell(effect.prior_ratio)};
  return row;
}

}  // namespace

std::vector<Column> effect_columns() {
  return {
      {said("Parts"), 9, Align::left, ""},
      {said("What the records say"), 70, Align::left, said("In brackets: the interval of 80 %"), 1},
      {said("Times as long"), 10, Align::right, said("Life with it over life without it")},
      {said("Expected before"), 10, Align::right,
       said("The same, as generally expected before the clinic's own records")}};
}

std::vector<TableRow> effect_rows(const wear::ClinicLife& fitted, const wear::PriorTable& priors) {
  std::vector<TableRow> rows;
  for (const auto& [kind, life] : fitted.kinds) {
    rows.push_back(grounds_row(life));
    for (const auto& effect : wear::factor_effects(life, priors)) {
      rows.push_back(effect_row(life, effect));
    }
  }
  return rows;
}

}  // namespace sparewell::desk
