/// Two ways of ordering beside each other, with the difference in words.
#pragma once

#include <string>
#include <vector>

#include "desk/table.hpp"
#include "supply/what_if.hpp"

namespace sparewell::desk {

[[nodiscard]] std::vector<Column> slider_columns();
/// One measure a row; a measure that differs is set apart.
[[nodiscard]] std::vector<TableRow> slider_rows(const supply::Outcome& usual,
                                                const supply::Outcome& other);
/// "3 lines more, 120.00 EUR more; 0.4 fewer pieces are expected to be missing ..."
[[nodiscard]] std::string difference_words(const supply::Outcome& usual,
                                           const supply::Outcome& other);

}  // namespace sparewell::desk
