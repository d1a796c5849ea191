/// Splits CSV text into rows (RFC 4180, on libcsv) and keeps the exact line each row begins on.
#pragma once

#include <functional>
#include <span>
#include <string>
#include <string_view>

namespace sparewell::exchange {

struct CsvRow {
  int line = 0;  ///< where the row begins; 1 is the first line of the text
  std::span<const std::string>
      fields;              ///< spaces around unquoted fields removed; valid in the call
  std::string_view text;   ///< the row as written, without its line end
  bool malformed = false;  ///< quotation marks are misplaced; `fields` is empty, `text` is one line
};

/// How the text ended.
struct CsvEnd {
  int open_quote_line = 0;        ///< the line of the row whose quoted field never ends, or 0
  bool without_line_end = false;  ///< the last row has no line end
  int last_line = 0;              ///< the line on which the last row begins
};

/// Calls `take` for each row until it returns false. Blank lines, and rows in which every field is
/// empty, are left out. Lines end with CRLF, LF or CR; a line break inside quotation marks counts
/// as a line and belongs to the field. After a malformed row reading goes on in the next line.
CsvEnd read_csv(std::string_view text, char separator,
                const std::function<bool(const CsvRow&)>& take, int first_line = 1);

}  // namespace sparewell::exchange
