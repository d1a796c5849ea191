/// Reads the CSV files that tests compare with.
#pragma once

#include <string>
#include <vector>

namespace sparewell::testing {

/// Header row first. `file` is relative to the top of the sources.
[[nodiscard]] std::vector<std::vector<std::string>> read_table(const std::string& file);

}  // namespace sparewell::testing
