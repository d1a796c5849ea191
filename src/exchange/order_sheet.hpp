/// The one sheet of an order's workbook.
#pragma once

#include <array>
#include <map>
#include <string>

#include "clinic/purchase_order.hpp"
#include "exchange/order_formats.hpp"
#include "exchange/workbook_file.hpp"

namespace sparewell::exchange {

/// "Purchase order SW-2026-0001"; "Not ordered" without a number.
[[nodiscard]] std::string order_title(const PurchaseOrder& order);

/// "Revision 2, replaces revision 1".
[[nodiscard]] std::string revision_words(const PurchaseOrder& order);

/// Writes one order from top to bottom; its layout is described at write_order_workbook().
class OrderSheet {
 public:
  OrderSheet(const PurchaseOrder& order, WorkbookFile& file)
      : order_{order}, file_{file}, formats_{file} {}
  void write();

 private:
  /// Columns of the lines, A to K.
  enum Column : lxw_col_t {
    number,
    supplier_item,
    item,
    description,
    size,
    side,
    quantity,
    unit_cost,
    line_total,
    currency,
    for_patients,
    column_count
  };

  void write_head();
  void head_line(const std::string& label, const std::string& text);
  void head_date(const std::string& label, Date date);
  void write_address();
  void write_headings();
  void write_line(const PurchaseOrderLine& line);
  void write_cost(const Money& each, int pieces);
  void write_totals();
  void write_unknown_costs(long unknown);
  void set_widths();
  void set_page();
  /// Text whose column is made wide enough for it.
  void put(lxw_row_t row, lxw_col_t column, const std::string& text, lxw_format* format);
  void widen(lxw_col_t column, std::size_t characters);

  const PurchaseOrder& order_;
  WorkbookFile& file_;
  OrderFormats formats_;
  lxw_row_t row_ = 0;  ///< the next to write
  lxw_row_t heading_row_ = 0;
  std::array<double, column_count> widths_{};
  std::map<Currency, Money> totals_;
};

}  // namespace sparewell::exchange
