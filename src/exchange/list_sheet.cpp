#include "exchange/list_sheet.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "clinic/say.hpp"

namespace sparewell::exchange {
namespace {

constexpr double widest_column = 64;
constexpr double line_height = 15;
constexpr std::size_t date_width = 12;
constexpr std::size_t fill_in_width = 16;
constexpr std::size_t amount_width = 14;

lxw_col_t at(std::size_t column) {
  return static_cast<lxw_col_t>(column);
}

std::string letters(std::size_t column) {
  char name[LXW_MAX_COL_NAME_LENGTH]{};
  lxw_col_to_name(name, at(column), 0);
  return name;
}

bool holds_numbers(ListFormat format) {
  return format == ListFormat::whole || format == ListFormat::decimal ||
         format == ListFormat::money;
}

/// An ampersand begins a command in footers; two stand for one.
std::string footer_text(std::string_view text) {
  std::string made;
  for (const char c : text) {
    made += c;
    if (c == '&') made += c;
  }
  return made;
}

}  // namespace

ListFormats::ListFormats(WorkbookFile& file)
    : shared{file},
      plain{file.add_format()},
      strong{file.add_format()},
      plain_after_number{file.add_format()},
      strong_after_number{file.add_format()},
      whole{file.add_format()},
      decimal{file.add_format()},
      heading_after_number{file.add_format()},
      fill_in{file.add_format()},
      caution{file.add_format()} {
  for (lxw_format* format :
       {plain, strong, plain_after_number, strong_after_number, whole, decimal, fill_in}) {
    format_set_align(format, LXW_ALIGN_VERTICAL_TOP);
  }
  for (lxw_format* format : {plain, strong, plain_after_number, strong_after_number}) {
    format_set_text_wrap(format);
  }
  for (lxw_format* format : {strong, strong_after_number}) format_set_bold(format);
  for (lxw_format* format : {plain_after_number, strong_after_number}) format_set_indent(format, 1);
  format_set_num_format(whole, "#,##0");
  format_set_num_format(decimal, "#,##0.00");
  format_set_border(fill_in, LXW_BORDER_THIN);
  format_set_text_wrap(fill_in);
  format_set_bold(heading_after_number);
  format_set_bottom(heading_after_number, LXW_BORDER_THIN);
  format_set_indent(heading_after_number, 1);
  format_set_align(heading_after_number, LXW_ALIGN_VERTICAL_TOP);
  format_set_italic(caution);
}

void ListSheetWriter::write() {
  write_head();
  write_headings();
  for (const ListRow& row : sheet_.rows) write_row(row);
  if (sheet_.total) write_totals();
  if (!sheet_.closing.empty()) ++row_;
  for (const std::string& sentence : sheet_.closing) file_.text(row_++, 0, sentence);
  for (std::size_t i = 0; i < widths_.size(); ++i) {
    const double width = std::min(widths_[i], widest_column);
    sheet_.columns[i].hidden ? file_.hide_column(at(i), width) : file_.column_width(at(i), width);
  }
  set_heading_height();
  set_page();
}

void ListSheetWriter::write_head() {
  file_.text(row_++, 0, sheet_.title, formats_.shared.title);
  for (const auto& [label, what] : sheet_.head) {
    file_.text(row_, 0, label, formats_.shared.bold);
    if (const auto* day = std::get_if<Date>(&what)) {
      file_.date(row_, 1, *day, formats_.shared.date);
    } else {
      file_.text(row_, 1, std::get<std::string>(what));
    }
    ++row_;
  }
  if (!sheet_.caution.empty()) file_.text(row_++, 0, sheet_.caution, formats_.caution);
  ++row_;
}

void ListSheetWriter::write_headings() {
  heading_row_ = row_++;
  for (std::size_t i = 0; i < sheet_.columns.size(); ++i) {
    const auto& column = sheet_.columns[i];
    const bool after = i > 0 && holds_numbers(sheet_.columns[i - 1].format);
    lxw_format* format = holds_numbers(column.format) ? formats_.shared.number_heading
                         : after                      ? formats_.heading_after_number
                                                      : formats_.shared.heading;
    file_.text(heading_row_, at(i), column.title, format);
    // Titles wrap: the longest are over narrow numbers.
    widen(i, std::min<std::size_t>(column.title.size() + 2, amount_width));
  }
  worksheet_freeze_panes(file_.sheet(), row_, 0);
}

void ListSheetWriter::write_row(const ListRow& row) {
  set_height(row);
  for (std::size_t i = 0; i < sheet_.columns.size(); ++i) write_cell(row, i);
  if (sheet_.total &&
      !std::holds_alternative<std::monostate>(row.cells[sheet_.total->value_column])) {
    totals_[currency_of(row)] += value(row, sheet_.total->value_column);
  }
  ++row_;
}

void ListSheetWriter::write_cell(const ListRow& row, std::size_t column) {
  const ListCell& cell = row.cells[column];
  lxw_format* format = format_of(row, column);
  if (std::holds_alternative<std::monostate>(cell)) {
    if (sheet_.columns[column].format == ListFormat::fill_in) {
      file_.check(worksheet_write_blank(file_.sheet(), row_, at(column), format));
      widen(column, fill_in_width);
    }
  } else if (const auto* text = std::get_if<std::string>(&cell)) {
    file_.text(row_, at(column), *text, text_format(row, column));
    // Bold letters are wider, by about a tenth.
    widen(column, text->size() + 2 + (row.strong ? text->size() / 10 : 0));
  } else if (const auto* day = std::get_if<Date>(&cell)) {
    file_.date(row_, at(column), *day, formats_.shared.date);
    widen(column, date_width);
  } else if (const auto* product = std::get_if<Product>(&cell)) {
    write_formula(
        row, column,
        fmt::format("={0}{2}*{1}{2}", letters(product->left), letters(product->right), row_ + 1));
  } else if (const auto* sum = std::get_if<Sum>(&cell)) {
    std::string formula = "=";
    for (const std::size_t part : sum->columns) {
      formula += fmt::format("{}{}{}", formula.size() > 1 ? "+" : "", letters(part), row_ + 1);
    }
    write_formula(row, column, formula);
  } else {
    file_.number(row_, at(column), value(row, column), format);
    if (std::holds_alternative<Money>(cell)) widen(column, amount_width);
  }
}

void ListSheetWriter::write_formula(const ListRow& row, std::size_t column,
                                    const std::string& formula) {
  file_.formula(row_, at(column), formula, value(row, column), format_of(row, column));
  widen(column, amount_width);
}

double ListSheetWriter::value(const ListRow& row, std::size_t column) const {
  const ListCell& cell = row.cells[column];
  if (const auto* number = std::get_if<double>(&cell)) return *number;
  if (const auto* money = std::get_if<Money>(&cell)) return money->major();
  if (const auto* product = std::get_if<Product>(&cell)) {
    return value(row, product->left) * value(row, product->right);
  }
  double sum = 0;
  if (const auto* of = std::get_if<Sum>(&cell)) {
    for (const std::size_t part : of->columns) sum += value(row, part);
  }
  return sum;
}

Currency ListSheetWriter::currency_of(const ListRow& row) const {
  if (!sheet_.total) return {};
  const auto* code = std::get_if<std::string>(&row.cells[sheet_.total->currency_column]);
  return code == nullptr ? Currency{} : Currency{*code};
}

lxw_format* ListSheetWriter::text_format(const ListRow& row, std::size_t column) const {
  if (column > 0 && holds_numbers(sheet_.columns[column - 1].format)) {
    return row.strong ? formats_.strong_after_number : formats_.plain_after_number;
  }
  return row.strong ? formats_.strong : formats_.plain;
}

lxw_format* ListSheetWriter::format_of(const ListRow& row, std::size_t column) {
  switch (sheet_.columns[column].format) {
    case ListFormat::whole:
      return formats_.whole;
    case ListFormat::decimal:
      return formats_.decimal;
    case ListFormat::money:
      return formats_.shared.money(currency_of(row), false);
    case ListFormat::date:
      return formats_.shared.date;
    case ListFormat::fill_in:
      return formats_.fill_in;
    default:
      return formats_.plain;
  }
}

void ListSheetWriter::write_totals() {
  const auto& total = *sheet_.total;
  // Formulas count rows from 1.
  const lxw_row_t first = heading_row_ + 2;
  const lxw_row_t last = row_;
  for (const auto& [currency, sum] : totals_) {
    const auto formula =
        fmt::format("=SUMIF({0}{2}:{0}{3},\"{4}\",{1}{2}:{1}{3})", letters(total.currency_column),
                    letters(total.value_column), first, last, currency.code);
    file_.text(row_, at(total.label_column), total.label, formats_.shared.bold);
    file_.formula(row_, at(total.value_column), formula, sum,
                  formats_.shared.money(currency, true));
    file_.text(row_, at(total.currency_column), currency.code, formats_.shared.after_number);
    ++row_;
  }
}

/// Spreadsheet programs do not always make room for text that takes several lines.
void ListSheetWriter::set_height(const ListRow& row) {
  double lines = 1;
  for (const ListCell& cell : row.cells) {
    const auto* text = std::get_if<std::string>(&cell);
    const auto length = text == nullptr ? 0.0 : static_cast<double>(text->size());
    // Lines break between words: about a tenth of each stays empty.
    if (length + 2 > widest_column)
      lines = std::max(lines, std::ceil(1.1 * length / widest_column));
  }
  if (lines == 1) return;
  file_.check(worksheet_set_row(file_.sheet(), row_, line_height * lines, nullptr));
}

void ListSheetWriter::set_heading_height() {
  std::size_t lines = 1;
  for (std::size_t i = 0; i < sheet_.columns.size(); ++i) {
    const auto width = static_cast<std::size_t>(std::max(1.0, widths_[i] - 2));
    lines = std::max(lines, (sheet_.columns[i].title.size() + width - 1) / width);
  }
  if (lines == 1) return;
  const double height = line_height * static_cast<double>(lines);
  file_.check(worksheet_set_row(file_.sheet(), heading_row_, height, nullptr));
}

void ListSheetWriter::set_page() {
  worksheet_set_landscape(file_.sheet());
  worksheet_set_paper(file_.sheet(), 9);  // A4
  worksheet_fit_to_pages(file_.sheet(), 1, 0);
  file_.check(worksheet_repeat_rows(file_.sheet(), heading_row_, heading_row_));
  const auto footer = say("&L{}&RPage &P of &N", footer_text(sheet_.title));
  file_.check(worksheet_set_footer(file_.sheet(), footer.c_str()));
}

void ListSheetWriter::widen(std::size_t column, std::size_t characters) {
  widths_[column] = std::max(widths_[column], static_cast<double>(characters));
}

}  // namespace sparewell::exchange
