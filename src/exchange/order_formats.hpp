/// The cell formats of an order's sheet.
#pragma once

#include <map>
#include <utility>

#include "clinic/money.hpp"
#include "exchange/workbook_file.hpp"

namespace sparewell::exchange {

class OrderFormats {
 public:
  explicit OrderFormats(WorkbookFile& file);

  /// Amounts with the currency's decimals, for example 1,234.50; the code has a column of its own.
  [[nodiscard]] lxw_format* money(const Currency& currency, bool bold);

  lxw_format* title;
  lxw_format* bold;
  lxw_format* heading;
  lxw_format* number_heading;  ///< over numbers, which stand at the right
  lxw_format* after_number;    ///< text beside a number, a little apart from it
  lxw_format* wrapped;
  lxw_format* date;
  lxw_format* counted;  ///< the number of a line, beside the text that follows it

 private:
  WorkbookFile& file_;
  std::map<std::pair<Currency, bool>, lxw_format*> money_;
};

}  // namespace sparewell::exchange
