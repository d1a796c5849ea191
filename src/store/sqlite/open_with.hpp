/// Opening with every decision open, for tests; open.hpp has the usual ones.
#pragma once

#include <chrono>
#include <memory>
#include <string>
#include <vector>

#include "store/open.hpp"
#include "store/sqlite/migrations.hpp"

namespace sparewell::store::sqlite {

struct Options {
  std::vector<Migration> migrations = our_migrations();
  std::chrono::milliseconds busy_timeout = usual_busy_timeout;
};

[[nodiscard]] std::unique_ptr<Store> open_file(const std::string& path, OpenMode mode, Clock clock,
                                               const Options& options);

}  // namespace sparewell::store::sqlite
