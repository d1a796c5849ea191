/// A connection without any of the store's rules, to plant what the store would refuse.
#pragma once

#include <fstream>
#include <iterator>
#include <string>

#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Database.h>

namespace sparewell::store::test {

inline SQLite::Database raw_database(const std::string& path) {
  return {path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, 1000};
}

inline std::string bytes_of(const std::string& path) {
  std::ifstream file{path, std::ios::binary};
  return {std::istreambuf_iterator<char>{file}, {}};
}

inline void write_bytes(const std::string& path, const std::string& bytes) {
  std::ofstream{path, std::ios::binary} << bytes;
}

}  // namespace sparewell::store::test
