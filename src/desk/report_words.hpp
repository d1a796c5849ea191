/// What an import did, in words and rows for a screen.
#pragma once

#include <string>
#include <vector>

#include "desk/import_folder.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

/// Two or three sentences: what was taken, what was refused and where that lies.
[[nodiscard]] std::string import_summary(const ImportReport& report);
/// One row a file.
[[nodiscard]] Table import_files(const ImportReport& report);
/// One row a refused row or file.
[[nodiscard]] Table import_refusals(const ImportReport& report);

}  // namespace sparewell::desk
