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

  /// Amounts with the currency's decimals and its code, for example 1,234.50 EUR.
  [[nodiscard]] lxw_format* money(const Currency& currency, bool bold);

  lxw_format* title;
  lxw_format* bold;
  lxw_format* heading;
  lxw_format* wrapped;
  lxw_format* date;

 private:
  WorkbookFile& file_;
  std::map<std::pair<Currency, bool>, lxw_format*> money_;
};

}  // namespace sparewell::exchange
