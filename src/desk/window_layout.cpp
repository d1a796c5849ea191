#include "desk/window_layout.hpp"

#include <algorithm>

#include <nlohmann/json.hpp>

#include "clinic/say.hpp"

namespace sparewell::desk {
namespace {

using nlohmann::json;

constexpr int least_percent = 25;
constexpr int most_percent = 1000;

TableLayout table_from(const json& values) {
  TableLayout table;
  table.widths = values.value("widths", table.widths);
  std::erase_if(table.widths, [](const auto& each) {
    return each.second < least_percent || each.second > most_percent;
  });
  table.sorted_by = values.value("sorted_by", table.sorted_by);
  table.ascending = values.value("ascending", table.ascending);
  return table;
}

}  // namespace

const std::vector<int>& text_sizes() {
  static const std::vector<int> sizes{100, 115, 130, 150, 175};
  return sizes;
}

int text_size(int percent, int steps) {
  const auto& sizes = text_sizes();
  if (steps == 0) return sizes.front();
  const auto at = std::ranges::lower_bound(sizes, percent) - sizes.begin();
  const auto last = std::ssize(sizes) - 1;
  return sizes[static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(at + steps, 0, last))];
}

std::string text_size_words(int percent) {
  if (percent == text_sizes().back()) {
    return say("Text is shown at {} %. It does not get any larger.", percent);
  }
  return percent == 100 ? say("Text has its usual size.") : say("Text is shown at {} %.", percent);
}

std::vector<ColumnRoom> rooms_by_hand(std::vector<ColumnRoom> rooms,
                                      const std::vector<Column>& columns,
                                      const TableLayout& layout) {
  for (std::size_t i = 0; i < rooms.size(); ++i) {
    const auto set = layout.widths.find(columns[i].title);
    if (set == layout.widths.end()) continue;
    const int width = rooms[i].wanted * set->second / 100;
    rooms[i] = {width, width, 0};
  }
  return rooms;
}

void note_width(TableLayout& layout, const Column& column, const ColumnRoom& room, int width) {
  if (room.wanted <= 0) return;
  layout.widths[column.title] =
      std::clamp((width * 100 + room.wanted / 2) / room.wanted, least_percent, most_percent);
}

std::optional<std::size_t> sorted_column(const std::vector<Column>& columns,
                                         const TableLayout& layout) {
  if (layout.sorted_by.empty()) return std::nullopt;
  const auto found = std::ranges::find(columns, layout.sorted_by, &Column::title);
  if (found == columns.end()) return std::nullopt;
  return static_cast<std::size_t>(found - columns.begin());
}

WindowLayout layout_from(const json& values) {
  WindowLayout layout;
  if (!values.is_object()) return layout;
  const auto& tables = values.value("tables", json::object());
  for (const auto& [name, table] : tables.items()) layout.tables[name] = table_from(table);
  layout.borders = values.value("borders", layout.borders);
  std::erase_if(layout.borders,
                [](const auto& each) { return !(each.second > 0 && each.second < 1); });
  layout.filters = values.value("filters", layout.filters);
  const int percent = values.value("text_percent", layout.text_percent);
  if (std::ranges::count(text_sizes(), percent) > 0) layout.text_percent = percent;
  return layout;
}

json layout_json(const WindowLayout& layout) {
  auto tables = json::object();
  for (const auto& [name, table] : layout.tables) {
    if (table == TableLayout{}) continue;
    tables[name] = {
        {"widths", table.widths}, {"sorted_by", table.sorted_by}, {"ascending", table.ascending}};
  }
  return {{"tables", tables},
          {"borders", layout.borders},
          {"filters", layout.filters},
          {"text_percent", layout.text_percent}};
}

}  // namespace sparewell::desk
