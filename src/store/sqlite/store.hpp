/// The port over an open database.
#pragma once

#include <chrono>
#include <memory>
#include <string>

#include "store/port.hpp"
#include "store/sqlite/connection.hpp"

namespace sparewell::store::sqlite {

struct OpenDatabase {
  std::string path;  ///< empty: in memory
  std::unique_ptr<Connection> writer;
  Clock clock;
  std::chrono::milliseconds busy_timeout;
  int version = 0;  ///< of the schema that this program knows
};

[[nodiscard]] std::unique_ptr<Store> make_store(OpenDatabase database);

}  // namespace sparewell::store::sqlite
