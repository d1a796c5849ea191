/// A table as a screen shows it, without the screen: rows known by an id of their own, one order, one
/// filter.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "desk/find_words.hpp"

namespace sparewell::desk {

enum class Align { left, right };

struct Column {
  std::string title;
  int width = 10;  ///< in characters of average width
  Align align = Align::left;
  std::string help;  ///< one sentence on what the column says; "" when its title says it
  int stretch = 0;   ///< its part of width left over; a stretching column also gives width up
};

struct Cell {
  std::string text;
  std::optional<double> number;  ///< what the column is ordered by instead of the text
};

struct TableRow {
  std::string id;           ///< stays the same when the table is filled again
  std::vector<Cell> cells;  ///< one for each column
  std::string search;       ///< folded text that the find box looks in
  unsigned marks = 0;       ///< bits that Table::require asks for; their meaning is the screen's
  bool strong = false;      ///< to be set apart; the row's text says why as well
};

class Table {
 public:
  explicit Table(std::vector<Column> columns);

  /// Puts other rows in place; order and filter stay in force. Rows come in their natural order.
  void fill(std::vector<TableRow> rows);
  /// Shows rows whose search text holds every typed word.
  void find(std::string_view typed);
  /// Shows rows that carry all of `marks`; 0 shows all.
  void require(unsigned marks);
  /// Rows that compare equal keep their natural order; cells without a number come last.
  void sort_by(std::size_t column, bool ascending);
  /// Back to the natural order.
  void sort_naturally();

  [[nodiscard]] const std::vector<Column>& columns() const { return columns_; }
  /// Rows shown.
  [[nodiscard]] std::size_t size() const { return shown_.size(); }
  /// Rows there are, shown or not.
  [[nodiscard]] std::size_t total() const { return rows_.size(); }
  /// The row shown at `position`, below size().
  [[nodiscard]] const TableRow& at(std::size_t position) const { return rows_[shown_[position]]; }
  /// Where the row with this id is shown; empty when it is not.
  [[nodiscard]] std::optional<std::size_t> position_of(std::string_view id) const;

 private:
  void arrange();
  void sort_rows(std::vector<std::size_t>& order) const;

  std::vector<Column> columns_;
  std::vector<TableRow> rows_;
  std::vector<std::size_t> shown_;
  FindWords words_;
  unsigned marks_ = 0;
  std::optional<std::size_t> sort_column_;
  bool ascending_ = true;
};

}  // namespace sparewell::desk
