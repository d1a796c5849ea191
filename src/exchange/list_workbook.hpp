/// Writes lists for people as workbooks: a title, a caution where health matters, rows, totals.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "clinic/date.hpp"
#include "clinic/money.hpp"

namespace sparewell::exchange {

enum class ListFormat {
  text,
  whole,    ///< pieces
  decimal,  ///< two decimals
  money,    ///< with the decimals of the row's currency
  date,
  fill_in  ///< framed, for a person to write into
};

struct ListColumn {
  std::string title;
  ListFormat format = ListFormat::text;
  bool hidden = false;
};

/// The product of two columns of the row, as a formula.
struct Product {
  std::size_t left = 0;
  std::size_t right = 0;
};
/// The sum of columns of the row, as a formula.
struct Sum {
  std::vector<std::size_t> columns;
};

/// A blank cell, text, a number, a day, an amount in the row's currency, or a formula.
using ListCell = std::variant<std::monostate, std::string, double, Date, Money, Product, Sum>;

struct ListRow {
  std::vector<ListCell> cells;  ///< one for each column
  bool strong = false;          ///< in bold; its words say why as well
};

/// A total for each currency below the rows, as a formula.
struct ListTotal {
  std::string label;
  std::size_t label_column = 0;
  std::size_t value_column = 0;
  std::size_t currency_column = 0;  ///< text cells with the code
};

struct ListSheet {
  std::string name;  ///< at most 31 characters
  std::string title;
  std::vector<std::pair<std::string, std::variant<std::string, Date>>> head;
  std::string caution;  ///< "" where no health depends on the list
  std::vector<ListColumn> columns;
  std::vector<ListRow> rows;
  std::optional<ListTotal> total;
  std::vector<std::string> closing;  ///< sentences below the totals
};

struct ListWorkbook {
  std::string title;
  std::string clinic_name;
  Date made_on;
  std::vector<ListSheet> sheets;  ///< at least one
};

/// Writes beside `file` under a temporary name and renames, so that a failed write leaves an older
/// file as it was. Throws std::runtime_error with one sentence when it cannot be written.
///
/// Dates and numbers are real ones; formulas have their values stored beside them. Text is always
/// text, whatever it begins with. Each sheet prints one page wide with its heading row repeated and
/// its title and page number at the foot.
void write_list_workbook(const ListWorkbook& list, const std::filesystem::path& file);

}  // namespace sparewell::exchange
