#include <charconv>
#include <stdexcept>
#include <string>

#include <fmt/format.h>

#include "desk/assessment.hpp"
#include "exchange/csv_reader.hpp"
#include "wear/prior_check.hpp"
#include "wear_prior_texts.hpp"

namespace sparewell::desk {
namespace {

[[noreturn]] void cannot_use(std::string_view file, int line, std::string_view why) {
  throw std::logic_error{fmt::format("{}, line {}: {}", file, line, why)};
}

/// One row of a table in resources/, whose columns stand in the order that its README gives.
struct PriorRow {
  std::string_view file;
  const exchange::CsvRow& row;

  [[nodiscard]] const std::string& cell(std::size_t column) const { return row.fields[column]; }

  [[nodiscard]] double number(std::size_t column) const {
    const std::string& text = cell(column);
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size()) {
      cannot_use(file, row.line, "'" + text + "' is not a number");
    }
    return value;
  }

  template <class Enum>
  [[nodiscard]] Enum one_of(std::size_t column) const {
    const auto value = parse_word<Enum>(cell(column));
    if (!value) cannot_use(file, row.line, "unknown word '" + cell(column) + "'");
    return *value;
  }

  [[nodiscard]] wear::Factor factor(std::size_t column) const {
    for (std::size_t i = 0; i < wear::factor_count; ++i) {
      const auto value = static_cast<wear::Factor>(i);
      if (wear::factor_name(value) == cell(column)) return value;
    }
    cannot_use(file, row.line, "unknown factor '" + cell(column) + "'");
  }
};

template <class Take>
void for_each_prior(std::string_view file, std::size_t columns, Take take) {
  for (std::size_t i = 0; i < prior_texts::embedded_text_count; ++i) {
    const auto& embedded = prior_texts::embedded_texts[i];
    if (embedded.name != file) continue;
    bool header = true;
    exchange::read_csv(embedded.text, ',', [&](const exchange::CsvRow& row) {
      if (row.fields.size() != columns) cannot_use(file, row.line, "wrong number of cells");
      if (!header) take(PriorRow{file, row});
      header = false;
      return true;
    });
  }
}

wear::LifePrior life_prior(const PriorRow& row) {
  wear::LifePrior prior;
  prior.kind = row.one_of<Kind>(0);
  if (!row.cell(1).empty()) prior.material = row.one_of<Material>(1);
  prior.median_days = row.number(2);
  prior.median_spread = row.number(3);
  prior.shape = row.number(4);
  prior.shape_spread = row.number(5);
  prior.source = row.cell(6);
  return prior;
}

wear::FactorPrior factor_prior(const PriorRow& row) {
  return {row.one_of<Kind>(0), row.factor(1), row.number(2), row.number(3), row.cell(4)};
}

wear::PersonPrior person_prior(const PriorRow& row) {
  return {row.one_of<Kind>(0), row.number(1), row.number(2), row.cell(3)};
}

wear::ItemPrior item_prior(const PriorRow& row) {
  return {row.one_of<Kind>(0), row.number(1), row.number(2), row.cell(3)};
}

wear::EndingPrior ending_prior(const PriorRow& row) {
  return {row.one_of<Kind>(0), row.one_of<EndReason>(1), row.number(2), row.number(3), row.cell(4)};
}

wear::PriorTable read_table() {
  wear::PriorTable table;
  for_each_prior("lives.csv", 7,
                 [&](const PriorRow& row) { table.lives.push_back(life_prior(row)); });
  for_each_prior("factors.csv", 5,
                 [&](const PriorRow& row) { table.factors.push_back(factor_prior(row)); });
  for_each_prior("persons.csv", 4,
                 [&](const PriorRow& row) { table.persons.push_back(person_prior(row)); });
  for_each_prior("items.csv", 4,
                 [&](const PriorRow& row) { table.items.push_back(item_prior(row)); });
  for_each_prior("endings.csv", 5,
                 [&](const PriorRow& row) { table.endings.push_back(ending_prior(row)); });
  if (const auto checked = wear::check_priors(table); !checked) {
    throw std::logic_error{checked.error().sentence};
  }
  return table;
}

}  // namespace

const wear::PriorTable& built_in_priors() {
  static const wear::PriorTable table = read_table();
  return table;
}

}  // namespace sparewell::desk
