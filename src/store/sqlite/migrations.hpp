/// Steps that bring a clinic file from one form to the next.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "store/sqlite/connection.hpp"

namespace sparewell::store::sqlite {

struct Migration {
  int version = 0;  ///< of the file after the step: 1, 2, 3 ... without gaps
  std::string sql;
};

/// The steps of this program, from schema/sqlite.
[[nodiscard]] const std::vector<Migration>& our_migrations();

/// The version after the last step.
[[nodiscard]] int last_version(std::span<const Migration> migrations);

/// The version that the file says it has.
[[nodiscard]] std::int64_t file_version(Connection& connection);

/// Runs the steps that the file lacks, each whole or not at all. Throws StoreFailure; the file then
/// is as the last whole step left it.
void migrate(Connection& connection, std::span<const Migration> migrations);

}  // namespace sparewell::store::sqlite
