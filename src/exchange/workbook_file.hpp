/// A new spreadsheet file; every refusal of the library becomes an exception.
#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>

#include <xlsxwriter.h>

#include "clinic/date.hpp"

namespace sparewell::exchange {

/// Nothing is written before save(). Rows and columns count from 0.
/// Every function throws std::runtime_error when the library refuses.
class WorkbookFile {
 public:
  /// The sheet's name has at most 31 characters.
  WorkbookFile(std::filesystem::path file, const std::string& sheet_name);

  /// A further sheet; what is written from now on goes there.
  void add_sheet(const std::string& sheet_name);

  [[nodiscard]] lxw_format* add_format();
  [[nodiscard]] lxw_worksheet* sheet() { return sheet_; }

  /// Text stays text, also when it begins like a formula.
  void text(lxw_row_t row, lxw_col_t column, const std::string& text, lxw_format* format = nullptr);
  void number(lxw_row_t row, lxw_col_t column, double value, lxw_format* format = nullptr);
  void date(lxw_row_t row, lxw_col_t column, Date date, lxw_format* format);
  /// `value` is what the formula comes to, for readers that do not calculate.
  void formula(lxw_row_t row, lxw_col_t column, const std::string& formula, double value,
               lxw_format* format = nullptr);
  void column_width(lxw_col_t column, double characters);
  void hide_column(lxw_col_t column, double characters);
  void properties(const std::string& title, const std::string& author, Date created);
  /// Throws with the library's reason when `error` is one.
  void check(lxw_error error) const;

  /// Writes under a temporary name beside the file and renames; removes the temporary on failure.
  void save();

 private:
  struct Free {
    void operator()(lxw_workbook* workbook) const { lxw_workbook_free(workbook); }
  };

  std::filesystem::path file_;
  std::filesystem::path temporary_;
  std::unique_ptr<lxw_workbook, Free> workbook_;
  lxw_worksheet* sheet_ = nullptr;
};

}  // namespace sparewell::exchange
