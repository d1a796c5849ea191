/// The figures of a picture as a table, to be copied and to be read.
#pragma once

#include <string>

#include "desk/picture/picture.hpp"
#include "desk/table.hpp"

namespace sparewell::picture {

/// One line a row with its headings first, cells apart by tabs: what spreadsheets take.
[[nodiscard]] std::string tab_separated(const FigureTable& table);

/// The same for a list; a row's id is its position.
[[nodiscard]] desk::Table as_list(const FigureTable& table);

}  // namespace sparewell::picture
