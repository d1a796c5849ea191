/// Reads a count sheet that a person filled in.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/stock.hpp"
#include "exchange/sheet/sheet_table.hpp"

namespace sparewell::desk {

/// A lot at a place, and what somebody counted there.
struct CountEntry {
  int row = 0;  ///< in the file; 0 when it was typed
  Lot lot;
  std::string place;
  std::optional<int> on_sheet;  ///< what the records said when the sheet was written
  int counted = 0;
  std::string remark;
};

/// A row that cannot be taken, the column that is wrong, and why.
struct RefusedCount {
  int row = 0;
  std::string column;  ///< its English title, see count_titles; "" when no one column is wrong
  std::string reason;
};

struct CountSheet {
  std::vector<CountEntry> entries;
  std::vector<RefusedCount> refused;
  int blank = 0;  ///< rows without a count: they are left alone
};

/// Finds the heading row by the titles of count_sheet(), in English or in the language of the
/// program, and reads the rows below it, CSV or workbook. A row without a place has that of the row
/// above. Refuses a file without such headings, in one sentence.
[[nodiscard]] Expected<CountSheet> read_count_sheet(const exchange::SheetTable& table);

}  // namespace sparewell::desk
