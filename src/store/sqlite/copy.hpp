/// Complete, checked copies of a database that may be in use meanwhile.
#pragma once

#include <string>
#include <vector>

#include "store/sqlite/connection.hpp"

namespace sparewell::store::sqlite {

enum class Existing {
  replace_clinic_file,  ///< an older copy is replaced; any other file is refused
  keep                  ///< an existing file is refused
};

/// Copies what `source` sees to `target`: first under a temporary name beside it, which takes its
/// place once the copy has been checked. Throws StoreFailure and then leaves no partial file.
void copy_database(Connection& source, const std::string& target, Existing existing);

/// Copies `path` to the first free name "PATH.before-upgrade-N.db" and returns that name.
std::string copy_before_upgrade(Connection& source, const std::string& path);

/// What SQLite's own checks of structure and references find; one sentence each.
[[nodiscard]] std::vector<std::string> structural_damage(Connection& connection);

/// Fills `target`, a database in memory, with what `source` holds.
void copy_into(Connection& source, Connection& target);

}  // namespace sparewell::store::sqlite
