#include "exchange/order_formats.hpp"

#include <fmt/format.h>

namespace sparewell::exchange {

// `file` and not file_: the formats are declared, and so made, before it.
OrderFormats::OrderFormats(WorkbookFile& file)
    : title{file.add_format()},
      bold{file.add_format()},
      heading{file.add_format()},
      number_heading{file.add_format()},
      after_number{file.add_format()},
      wrapped{file.add_format()},
      date{file.add_format()},
      counted{file.add_format()},
      file_{file} {
  for (lxw_format* format : {title, bold, heading, number_heading}) format_set_bold(format);
  for (lxw_format* format : {bold, heading, number_heading, after_number, wrapped, date, counted}) {
    format_set_align(format, LXW_ALIGN_VERTICAL_TOP);
  }
  format_set_font_size(title, 16);
  for (lxw_format* format : {heading, number_heading}) {
    format_set_text_wrap(format);
    format_set_bottom(format, LXW_BORDER_THIN);
  }
  format_set_align(number_heading, LXW_ALIGN_RIGHT);
  format_set_indent(after_number, 1);
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
  const std::string pattern = fmt::format("#,##0{}{:0<{}}", decimals > 0 ? "." : "", "", decimals);
  format_set_num_format(format, pattern.c_str());
  return format;
}

}  // namespace sparewell::exchange
