/// What a page of the window puts on paper: lists as they are shown, with what they must say.
#pragma once

#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

struct PrintedRow {
  std::vector<std::string> cells;  ///< one for each column
  bool strong = false;
};

struct PrintedTable {
  std::string title;  ///< "" when the title of the whole says it
  std::vector<Column> columns;
  std::vector<PrintedRow> rows;
  std::string empty_words;  ///< in place of rows when there are none
};

struct Printable {
  std::string title;
  std::string clinic;
  std::string day;                 ///< that everything is worked out for, in words
  std::vector<std::string> notes;  ///< below the title: what is shown, cautions
  std::vector<PrintedTable> tables;
};

/// The rows that the table shows, in the order in which it shows them.
[[nodiscard]] PrintedTable printed(const Table& table, std::string title = {},
                                   std::string empty_words = {});
/// With the clinic and the day filled in.
[[nodiscard]] Printable printable_of(const Day& day, std::string title,
                                     std::vector<PrintedTable> tables,
                                     std::vector<std::string> notes = {});

}  // namespace sparewell::desk
