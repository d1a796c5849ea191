/// One sheet of a list's workbook, written from top to bottom.
#pragma once

#include <map>
#include <vector>

#include "exchange/list_workbook.hpp"
#include "exchange/order_formats.hpp"
#include "exchange/workbook_file.hpp"

namespace sparewell::exchange {

/// Formats that lists have besides those of orders; common to the sheets of a workbook.
struct ListFormats {
  explicit ListFormats(WorkbookFile& file);

  OrderFormats shared;
  lxw_format* plain;
  lxw_format* strong;
  lxw_format* plain_after_number;  ///< a little apart from the number before it
  lxw_format* strong_after_number;
  lxw_format* whole;
  lxw_format* decimal;
  lxw_format* heading_after_number;
  lxw_format* fill_in;
  lxw_format* caution;
};

class ListSheetWriter {
 public:
  ListSheetWriter(const ListSheet& sheet, WorkbookFile& file, ListFormats& formats)
      : sheet_{sheet}, file_{file}, formats_{formats}, widths_(sheet.columns.size(), 0.0) {}
  void write();

 private:
  void write_head();
  void write_headings();
  void write_row(const ListRow& row);
  void write_cell(const ListRow& row, std::size_t column);
  void write_formula(const ListRow& row, std::size_t column, const std::string& formula);
  void write_totals();
  void set_height(const ListRow& row);
  void set_heading_height();
  void set_page();
  void widen(std::size_t column, std::size_t characters);
  [[nodiscard]] double value(const ListRow& row, std::size_t column) const;
  [[nodiscard]] Currency currency_of(const ListRow& row) const;
  [[nodiscard]] lxw_format* text_format(const ListRow& row, std::size_t column) const;
  [[nodiscard]] lxw_format* format_of(const ListRow& row, std::size_t column);

  const ListSheet& sheet_;
  WorkbookFile& file_;
  ListFormats& formats_;
  lxw_row_t row_ = 0;  ///< the next to write
  lxw_row_t heading_row_ = 0;
  std::vector<double> widths_;
  std::map<Currency, double> totals_;
};

}  // namespace sparewell::exchange
