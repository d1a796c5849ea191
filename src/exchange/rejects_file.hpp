/// Writes refused rows back as a clinic file that can be corrected and imported.
#pragma once

#include <string>
#include <vector>

#include "exchange/csv_file.hpp"
#include "exchange/table.hpp"

namespace sparewell::exchange {

/// One refused row as it will be written.
struct Reject {
  int line = 0;
  Fault fault;
  std::vector<std::string> fields;  ///< as in the file; empty when they do not fit the header
  std::string text;                 ///< the row as written, when its fields do not fit the header
  int copy = 0;                     ///< its number among alike rows, 0 when not known or not wanted
  std::string alike{};              ///< what goes into the column rejected_alike
};

/// The text of a file with the columns of `source` (without earlier rejected_ columns), a column
/// "copy" where one is known, and the columns rejected_line, rejected_column, rejected_reason and
/// rejected_text (and rejected_alike where it is needed). Fields are written as they were, in the
/// file's separator.
[[nodiscard]] std::string rejects_text(const CsvFile& source, const std::vector<Reject>& rejects);

}  // namespace sparewell::exchange
