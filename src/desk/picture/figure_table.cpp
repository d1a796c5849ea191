#include "desk/picture/figure_table.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace sparewell::picture {
namespace {

constexpr int widest_column = 48;

std::string line_of(std::vector<std::string> cells) {
  for (auto& cell : cells) {
    std::ranges::replace_if(
        cell, [](char c) { return c == '\t' || c == '\n' || c == '\r'; }, ' ');
  }
  return fmt::format("{}\n", fmt::join(cells, "\t"));
}

/// Letters, not bytes.
int length_of(const std::string& text) {
  return static_cast<int>(std::ranges::count_if(
      text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

}  // namespace

std::string tab_separated(const FigureTable& table) {
  std::string text = line_of(table.headings);
  for (const auto& row : table.rows) text += line_of(row);
  return text;
}

desk::Table as_list(const FigureTable& table) {
  std::vector<desk::Column> columns;
  for (std::size_t i = 0; i < table.headings.size(); ++i) {
    int width = length_of(table.headings[i]);
    for (const auto& row : table.rows) width = std::max(width, length_of(row.at(i)));
    columns.push_back({table.headings[i],
                       std::min(width + 2, widest_column),
                       desk::Align::left,
                       {},
                       i == 0 ? 1 : 0});
  }
  desk::Table list{std::move(columns)};
  std::vector<desk::TableRow> rows;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    desk::TableRow row;
    row.id = std::to_string(i);
    for (const auto& cell : table.rows[i]) row.cells.push_back({cell, std::nullopt});
    rows.push_back(std::move(row));
  }
  list.fill(std::move(rows));
  return list;
}

}  // namespace sparewell::picture
