/// Reads the rows of a checked file into records, each with what is wrong with it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "clinic/say.hpp"
#include "exchange/csv_file.hpp"
#include "exchange/table.hpp"

namespace sparewell::exchange {

inline constexpr std::string_view copy_column = "copy";

/// What in a row may decide the currency of its amounts.
struct CurrencyClues {
  std::optional<std::string_view> own;  ///< the cell "currency"; nullopt when there is no column
  std::string_view supplier;            ///< the cell "supplier", or ""
  std::string_view item;                ///< the cell "item_code", or ""
};
using CurrencyOf = std::function<Currency(const CurrencyClues&)>;

template <class Record>
struct ParsedRow {
  const CsvRow& source;
  Record record{};
  std::optional<Fault> fault{};      ///< the first thing that is wrong
  bool key_known = false;            ///< every cell of the natural key was understood
  int wrong_key_cells = 0;           ///< cells of the natural key that were not understood
  std::size_t wrong_key_column = 0;  ///< the last of them, as a position in the table's columns
  bool fits_header = true;           ///< false when fields cannot be told apart by column
  int copy = 0;                      ///< from the column "copy"; 0 when blank
  double done = 0;                   ///< share of the file read so far
};

/// The columns of a table as the file check needs them.
template <class Record>
[[nodiscard]] std::vector<ColumnSpec> column_specs(const Table<Record>& table) {
  std::vector<ColumnSpec> specs;
  for (const auto& column : table.columns) {
    specs.push_back({column.name, column.need == Need::required});
  }
  if (table.copies) specs.push_back({copy_column, false});
  return specs;
}

/// What is wrong with the shape of a row, or nullopt.
[[nodiscard]] std::optional<Fault> shape_fault(const CsvRow& row, std::size_t columns);
/// The cell at a position, without spaces around it; "" where the row or the column lacks it.
[[nodiscard]] std::string_view cell_at(const CsvRow& row, int position);

template <class Record>
class TableReader {
 public:
  /// The file must have been opened with column_specs(table). All arguments must outlive the
  /// reader.
  TableReader(const CsvFile& file, const Table<Record>& table, const FolderFormat& format,
              const CurrencyOf& currency_of)
      : file_{file},
        table_{table},
        format_{format},
        currency_of_{currency_of},
        currency_at_{file.position_of("currency")},
        supplier_at_{file.position_of("supplier")},
        item_at_{file.position_of("item_code")},
        copy_at_{table.copies ? file.position_of(copy_column) : -1} {}

  /// Calls `take(ParsedRow<Record>&)` for each row until it returns false.
  template <class Take>
  void read(Take take) const {
    file_.for_each_row([&](const CsvRow& row, double done) {
      ParsedRow<Record> parsed = parse(row);
      parsed.done = done;
      return take(parsed);
    });
  }

 private:
  [[nodiscard]] ParsedRow<Record> parse(const CsvRow& row) const {
    ParsedRow<Record> parsed{.source = row};
    parsed.fault = shape_fault(row, file_.header().size());
    if (parsed.fault) {
      parsed.fits_header = false;
      return parsed;
    }
    const Currency currency = table_.has_amounts ? currency_of_row(row) : Currency{};
    if (table_.start) table_.start(parsed.record, currency);
    parsed.key_known = true;
    for (std::size_t i = 0; i < table_.columns.size(); ++i) {
      read_column(i, Cell{cell_at(row, file_.positions()[i]), format_, currency}, parsed);
    }
    read_copy(row, currency, parsed);
    if (!parsed.fault && table_.check) parsed.fault = table_.check(parsed.record);
    return parsed;
  }

  void read_column(std::size_t at, const Cell& cell, ParsedRow<Record>& parsed) const {
    const auto& column = table_.columns[at];
    Reason reason;
    if (!cell.text.empty()) {
      reason = column.read(parsed.record, cell);
    } else if (column.need == Need::required) {
      reason = said("is empty; fill it in");
    }
    if (reason.empty()) return;
    if (column.in_key) {
      parsed.key_known = false;
      parsed.wrong_key_column = at;
      ++parsed.wrong_key_cells;
    }
    if (!parsed.fault) parsed.fault = Fault{column.name, std::move(reason)};
  }

  void read_copy(const CsvRow& row, const Currency& currency, ParsedRow<Record>& parsed) const {
    const Cell cell{cell_at(row, copy_at_), format_, currency};
    if (cell.text.empty()) return;
    static const auto copy_number = whole_between(1, 1'000'000, "1, 2, 3 ...");
    auto reason = copy_number(cell, parsed.copy);
    if (reason.empty()) return;
    parsed.copy = 0;
    parsed.key_known = false;
    if (!parsed.fault) parsed.fault = Fault{std::string{copy_column}, std::move(reason)};
  }

  [[nodiscard]] Currency currency_of_row(const CsvRow& row) const {
    CurrencyClues clues;
    if (currency_at_ >= 0) clues.own = cell_at(row, currency_at_);
    clues.supplier = cell_at(row, supplier_at_);
    clues.item = cell_at(row, item_at_);
    return currency_of_(clues);
  }

  const CsvFile& file_;
  const Table<Record>& table_;
  const FolderFormat& format_;
  const CurrencyOf& currency_of_;
  int currency_at_;
  int supplier_at_;
  int item_at_;
  int copy_at_;
};

}  // namespace sparewell::exchange
