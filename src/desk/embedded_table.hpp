/// Reading the tables that the program is built with.
#pragma once

#include <functional>
#include <span>
#include <string>
#include <string_view>

namespace sparewell::desk {

/// Calls `take` with the cells of each row of a CSV text below its header. Throws std::logic_error
/// naming the file and line when a row has another number of columns or `take` returns false.
void for_each_table_row(std::string_view file, std::string_view text, std::size_t columns,
                        const std::function<bool(std::span<const std::string>)>& take);

}  // namespace sparewell::desk
