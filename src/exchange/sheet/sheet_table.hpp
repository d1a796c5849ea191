/// The cells of one sheet, read from a workbook or from CSV text: what somebody else filled in.
#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "clinic/date.hpp"
#include "clinic/refusal.hpp"
#include "exchange/folder_format.hpp"

namespace sparewell::exchange {

struct SheetCell {
  enum class Kind {
    blank,
    text,
    number,
    date,
    error  ///< the spreadsheet program could not calculate it; `text` is its word, such as "#REF!"
  };
  Kind kind = Kind::blank;
  std::string text;  ///< as written; of a number its shortest form, of a date ISO 8601
  double number = 0;
  Date date;

  [[nodiscard]] bool blank() const { return kind == Kind::blank; }
};

struct SheetRow {
  int number = 0;  ///< as the spreadsheet program counts, or the line of CSV text
  std::vector<SheetCell> cells;

  /// The cell of a column counted from 0; a blank one behind the last.
  [[nodiscard]] const SheetCell& at(std::size_t column) const;
};

struct SheetTable {
  std::string name;            ///< of the file, for sentences
  std::vector<SheetRow> rows;  ///< rising; rows without content are left out
};

/// What a file may hold at most; beyond it the file is refused. A zip file of a few kilobytes can
/// unfold to any size, so the limits hold for what comes out of it.
struct SheetLimits {
  std::size_t file_bytes = 64U << 20U;
  std::size_t part_bytes = 128U << 20U;  ///< of one part of a workbook, unfolded
  std::size_t cells = 2'000'000;
};

/// Reads a sheet of a workbook (.xlsx) or CSV text, by what the file begins with. `sheet` names one
/// of a workbook's sheets; "" takes the first. Refuses in one sentence that begins with the file's
/// name: what is neither, protected by a password, damaged, too large, without that sheet, or with
/// a formula whose value was never stored.
[[nodiscard]] Expected<SheetTable> read_sheet(const std::filesystem::path& file,
                                              const std::string& sheet = {},
                                              const FolderFormat& format = {},
                                              const SheetLimits& limits = {});

/// The same from the bytes of a file.
[[nodiscard]] Expected<SheetTable> read_sheet_bytes(const std::string& name,
                                                    const std::string& bytes,
                                                    const std::string& sheet = {},
                                                    const FolderFormat& format = {},
                                                    const SheetLimits& limits = {});

/// Letters of a column counted from 0: "A", "AB".
[[nodiscard]] std::string column_letters(std::size_t column);

}  // namespace sparewell::exchange
