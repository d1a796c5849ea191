/// Opens or makes the clinic file.
#pragma once

#include <memory>
#include <string>

#include "store/port.hpp"

namespace sparewell::store {

enum class OpenMode {
  existing,  ///< refuse when there is no such file
  again,  ///< as existing, of a file that this program has opened before: its content, which takes
          ///< the longer the more is recorded, is not looked through for damage once more
  create  ///< make the file when there is none
};

/// Opens the SQLite clinic file at `path`, upgrading an older one after a copy of it has been made
/// beside it ("PATH.before-upgrade-1.db", with the first number that is free). A file that is
/// refused is not touched. Throws StoreFailure: not_a_clinic, schema_too_new, corrupt, read_only,
/// cannot_open.
[[nodiscard]] std::unique_ptr<Store> open_clinic_file(const std::string& path, OpenMode mode,
                                                      Clock clock);

/// A database in memory, for tests. Each snapshot is a copy, and none can be taken while a unit of
/// work is open (StoreFailure{busy}).
[[nodiscard]] std::unique_ptr<Store> open_in_memory(Clock clock);

}  // namespace sparewell::store
