/// The rows of a table that the program is built with.
#pragma once

#include <cstddef>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>

#include <fmt/format.h>

#include "exchange/csv_reader.hpp"

namespace sparewell::desk {

/// Calls `take` with the cells of each row of `file` after its header row. Throws std::logic_error
/// for a row of another number of cells, and for one that `take` returns false for. `texts` are
/// what sparewell_embed made.
template <class EmbeddedText, class Take>
void for_each_embedded_row(std::span<const EmbeddedText> texts, std::string_view file,
                           std::size_t columns, Take take) {
  for (const EmbeddedText& embedded : texts) {
    if (embedded.name != file) continue;
    bool header = true;
    exchange::read_csv(embedded.text, ',', [&](const exchange::CsvRow& row) {
      const std::span<const std::string> cells{row.fields};
      if (cells.size() != columns || (!header && !take(cells))) {
        throw std::logic_error{fmt::format("{}, line {} cannot be used", file, row.line)};
      }
      header = false;
      return true;
    });
  }
}

}  // namespace sparewell::desk
