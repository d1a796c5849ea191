/// One file of a clinic folder, checked as a whole: it is text, it has a header with the columns
/// that are needed, and it is not cut off.
#pragma once

#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "clinic/refusal.hpp"
#include "exchange/csv_reader.hpp"
#include "exchange/folder_format.hpp"

namespace sparewell::exchange {

struct ColumnSpec {
  std::string_view name;
  bool required = false;
};

class CsvFile {
 public:
  /// Checks `bytes` against the columns that the file may have. Refuses the whole file in one
  /// sentence that begins with `name`. Column names are compared without regard to letter case,
  /// and to space, hyphen or underscore.
  [[nodiscard]] static Expected<CsvFile> open(std::string name, std::string bytes,
                                              const FolderFormat& format,
                                              std::span<const ColumnSpec> columns);

  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] char separator() const { return separator_; }
  /// The column names as written.
  [[nodiscard]] const std::vector<std::string>& header() const { return header_; }
  /// Where in a row each of the columns given to open() stands; -1 for one that is absent.
  [[nodiscard]] const std::vector<int>& positions() const { return positions_; }
  /// Where the column of this name stands; -1 when there is none.
  [[nodiscard]] int position_of(std::string_view column) const;
  /// True for a file of refused rows that this program wrote.
  [[nodiscard]] bool holds_rejects() const { return holds_rejects_; }
  [[nodiscard]] bool has_byte_order_mark() const { return byte_order_mark_; }
  [[nodiscard]] bool has_separator_line() const { return separator_line_; }
  /// Unknown columns and the like.
  [[nodiscard]] const std::vector<std::string>& notes() const { return notes_; }
  [[nodiscard]] std::size_t size() const { return bytes_.size(); }

  /// Calls `take` with each row after the header, and the share of the file read so far (0 to 1),
  /// until it returns false.
  void for_each_row(const std::function<bool(const CsvRow&, double)>& take) const;

 private:
  [[nodiscard]] std::string_view text() const;
  [[nodiscard]] int first_line() const { return separator_line_ ? 2 : 1; }
  /// Each returns the sentence that refuses the file, or "".
  [[nodiscard]] std::string take_separator_line();
  [[nodiscard]] std::string read_structure();
  [[nodiscard]] std::string match_columns(std::span<const ColumnSpec> columns);
  [[nodiscard]] std::string missing_columns(std::span<const ColumnSpec> columns) const;

  std::string name_;
  std::string bytes_;
  std::size_t text_at_ = 0;
  char separator_ = ',';
  std::vector<std::string> header_;
  int header_line_ = 0;
  std::string header_text_;
  std::vector<int> positions_;
  std::vector<std::string> notes_;
  bool holds_rejects_ = false;
  bool byte_order_mark_ = false;
  bool separator_line_ = false;
};

/// Columns that a file of refused rows has besides its own; they are ignored when it is imported.
inline constexpr std::string_view rejected_line_column = "rejected_line";
inline constexpr std::string_view rejected_column_column = "rejected_column";
inline constexpr std::string_view rejected_reason_column = "rejected_reason";
/// The whole row as it was, where it could not be told which field belongs to which column.
inline constexpr std::string_view rejected_text_column = "rejected_text";
/// How many rows of the source are alike, should the refused cell of the key turn out to hold a
/// certain text: lines "issued_on 2026-01-05 = 3".
inline constexpr std::string_view rejected_alike_column = "rejected_alike";

}  // namespace sparewell::exchange
