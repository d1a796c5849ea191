/// How somebody has arranged the window: widths and order of lists, borders, filters, size of text.
/// Holds nothing about patients: what is typed into a find box is not part of it.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "desk/column_widths.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

struct TableLayout {
  std::map<std::string, int> widths;  ///< set by hand: percent of the usual width, by column title
  std::string sorted_by;              ///< title of a column; "" for the natural order
  bool ascending = true;

  friend bool operator==(const TableLayout&, const TableLayout&) = default;
};

struct WindowLayout {
  std::map<std::string, TableLayout> tables;   ///< by the list's name
  std::map<std::string, double> borders;       ///< share of the first pane, by the border's name
  std::map<std::string, std::string> filters;  ///< "on", "off" or the choice, by the filter's name
  int text_percent = 100;                      ///< one of text_sizes()

  friend bool operator==(const WindowLayout&, const WindowLayout&) = default;
};

/// Sizes of text that the window can show, in percent of the desktop's.
[[nodiscard]] const std::vector<int>& text_sizes();
/// The size `steps` larger or smaller, no further than the last there is; 100 for 0 steps.
[[nodiscard]] int text_size(int percent, int steps);
/// "Text is shown at 130 %."
[[nodiscard]] std::string text_size_words(int percent);

/// The rooms of a table's columns as somebody has set them: such columns keep their width.
[[nodiscard]] std::vector<ColumnRoom> rooms_by_hand(std::vector<ColumnRoom> rooms,
                                                    const std::vector<Column>& columns,
                                                    const TableLayout& layout);
/// Notes a width that was set by hand, in the unit of `room`.
void note_width(TableLayout& layout, const Column& column, const ColumnRoom& room, int width);
/// The column that the table is ordered by, if it still has it.
[[nodiscard]] std::optional<std::size_t> sorted_column(const std::vector<Column>& columns,
                                                       const TableLayout& layout);

/// What cannot be read is left out.
[[nodiscard]] WindowLayout layout_from(const nlohmann::json& values);
[[nodiscard]] nlohmann::json layout_json(const WindowLayout& layout);

}  // namespace sparewell::desk
