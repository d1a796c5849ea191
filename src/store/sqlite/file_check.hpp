/// What can be said about a file before SQLite opens it: opening may already write.
#pragma once

#include <string>

#include "store/open.hpp"

namespace sparewell::store::sqlite {

enum class FileState {
  missing,
  empty,       ///< no byte in it: left by a program that stopped while making it
  clinic_file  ///< has the header of a clinic file, or is too fresh to tell
};

/// Reads the header without trusting it. Throws StoreFailure: not_a_clinic, schema_too_new (newer
/// than `our_version`), corrupt, read_only, cannot_open.
[[nodiscard]] FileState look_at(const std::string& path, int our_version);

/// Makes an empty file that only its owner and group may read. One that exists is left alone.
void make_empty_file(const std::string& path);

/// Throws StoreFailure{cannot_open} when the folder of `path` is missing or on another computer:
/// locks on network drives do not protect a database.
void check_folder(const std::string& path);

/// The name of the kind of network file system with this statfs(2) number, or "".
[[nodiscard]] std::string_view network_file_system(long statfs_type);

/// Throws StoreFailure{schema_too_new} when `version` is above `our_version`.
void check_version(std::int64_t version, int our_version);

}  // namespace sparewell::store::sqlite
