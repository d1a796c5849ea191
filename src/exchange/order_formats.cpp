#include "exchange/order_formats.hpp"

#include <fmt/format.h>

namespace sparewell::exchange {

// `file` and not file_: the formats are declared, and so made, before it.
OrderFormats::OrderFormats(WorkbookFile& file)
    : title{file.add_format()},
      bold{file.add_format()},
      heading{file.add_format()},
      wrapped{file.add_format()},
      date{file.add_format()},
      counted{file.add_format()},
      file_{file} {
  for (lxw_format* format : {title, bold, heading}) format_set_bold(format);
  for (lxw_format* format : {bold, heading, wrapped, date, counted}) {
    format_set_align(format, LXW_ALIGN_VERTICAL_TOP);
  }
  format_set_font_size(title, 16);
  format_set_text_wrap(heading);
  format_set_bottom(heading, LXW_BORDER_THIN);
  format_set_text_wrap(wrapped);
  format_set_num_format(date, "yyyy-mm-dd");
  format_set_align(date, LXW_ALIGN_LEFT);
  format_set_align(counted, LXW_ALIGN_LEFT);
}

lxw_format* OrderFormats::money(const Currency& currency, bool is_bold) {
  lxw_format*& format = money_[{currency, is_bold}];
  if (format != nullptr) return format;
  format = file_.add_format();
  if (is_bold) format_set_bold(format);
  format_set_align(format, LXW_ALIGN_VERTICAL_TOP);
  const int decimals = currency.decimals();
  const std::string pattern =
      fmt::format("#,##0{}{:0<{}}", decimals > 0 ? "." : "", "", decimals);
  format_set_num_format(format, pattern.c_str());
  return format;
}

}  // namespace sparewell::exchange
