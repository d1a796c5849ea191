#include "exchange/workbook_file.hpp"

#include <chrono>
#include <new>
#include <stdexcept>
#include <system_error>

#include "clinic/say.hpp"

namespace sparewell::exchange {

WorkbookFile::WorkbookFile(std::filesystem::path file, const std::string& sheet_name)
    : file_{std::move(file)}, temporary_{file_} {
  temporary_ += ".part";
  workbook_.reset(workbook_new(temporary_.c_str()));
  if (!workbook_) throw std::bad_alloc{};
  add_sheet(sheet_name);
}

void WorkbookFile::add_sheet(const std::string& sheet_name) {
  check(workbook_validate_sheet_name(workbook_.get(), sheet_name.c_str()));
  sheet_ = workbook_add_worksheet(workbook_.get(), sheet_name.c_str());
  if (sheet_ == nullptr) throw std::bad_alloc{};
}

lxw_format* WorkbookFile::add_format() {
  lxw_format* format = workbook_add_format(workbook_.get());
  if (format == nullptr) throw std::bad_alloc{};
  return format;
}

void WorkbookFile::text(lxw_row_t row, lxw_col_t column, const std::string& text,
                        lxw_format* format) {
  check(worksheet_write_string(sheet_, row, column, text.c_str(), format));
}

void WorkbookFile::number(lxw_row_t row, lxw_col_t column, double value, lxw_format* format) {
  check(worksheet_write_number(sheet_, row, column, value, format));
}

void WorkbookFile::date(lxw_row_t row, lxw_col_t column, Date date, lxw_format* format) {
  const std::chrono::year_month_day parts{date};
  lxw_datetime day{};
  day.year = static_cast<int>(parts.year());
  day.month = static_cast<int>(static_cast<unsigned>(parts.month()));
  day.day = static_cast<int>(static_cast<unsigned>(parts.day()));
  check(worksheet_write_datetime(sheet_, row, column, &day, format));
}

void WorkbookFile::formula(lxw_row_t row, lxw_col_t column, const std::string& formula,
                           double value, lxw_format* format) {
  check(worksheet_write_formula_num(sheet_, row, column, formula.c_str(), format, value));
}

void WorkbookFile::column_width(lxw_col_t column, double characters) {
  check(worksheet_set_column(sheet_, column, column, characters, nullptr));
}

void WorkbookFile::hide_column(lxw_col_t column, double characters) {
  lxw_row_col_options options{};
  options.hidden = 1;
  check(worksheet_set_column_opt(sheet_, column, column, characters, nullptr, &options));
}

void WorkbookFile::properties(const std::string& title, const std::string& author, Date created) {
  std::string title_copy = title;
  std::string author_copy = author;
  lxw_doc_properties properties{};
  properties.title = title_copy.data();
  properties.author = author_copy.data();
  properties.company = author_copy.data();
  // The day of the order, not the moment of writing: the same order gives the same file.
  properties.created = std::chrono::system_clock::to_time_t(created);
  check(workbook_set_properties(workbook_.get(), &properties));
}

void WorkbookFile::check(lxw_error error) const {
  if (error == LXW_NO_ERROR) return;
  throw std::runtime_error{say("{} could not be written: {}", file_.string(), lxw_strerror(error))};
}

void WorkbookFile::save() {
  // workbook_close() frees the workbook whether it succeeds or not.
  const lxw_error closed = workbook_close(workbook_.release());
  std::error_code failure;
  if (closed == LXW_NO_ERROR) {
    std::filesystem::rename(temporary_, file_, failure);
    if (!failure) return;
  }
  std::error_code ignored;
  std::filesystem::remove(temporary_, ignored);
  check(closed);
  throw std::runtime_error{say("{} could not be written: {}", file_.string(), failure.message())};
}

}  // namespace sparewell::exchange
