/// One row of a table in full, where its columns are too narrow for what they say.
#pragma once

#include <string>

#include "desk/table.hpp"

namespace sparewell::desk {

/// "Item: L-1" and so on, a line for each cell that says something; "" when the row is not shown.
[[nodiscard]] std::string row_words(const Table& table, const std::string& id);

}  // namespace sparewell::desk
