/// The engines that the conformance suite runs on. To add one: a class with open(), and its name in
/// the lists below.
#pragma once

#include <chrono>
#include <filesystem>
#include <memory>
#include <string>

#include <doctest/doctest.h>
#include <stdlib.h>

#include "store/open.hpp"
#include "store/sqlite/open_with.hpp"

namespace sparewell::store::test {

/// 2026-11-25 09:30:00 UTC, always.
inline std::chrono::system_clock::time_point fixed_now() {
  return make_date(2026, 11, 25) + std::chrono::hours{9} + std::chrono::minutes{30};
}

/// A folder of its own, gone at the end of the test.
class TemporaryFolder {
 public:
  TemporaryFolder() {
    auto name = (std::filesystem::temp_directory_path() / "sparewell-store-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error{"no temporary folder"};
    path_ = name;
  }
  ~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;

  [[nodiscard]] std::string file(const std::string& name) const { return path_ / name; }
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

/// One SQLite file; every open() is a Store of its own on it.
class SqliteFile {
 public:
  [[nodiscard]] std::unique_ptr<Store> open() const {
    sqlite::Options options;
    options.busy_timeout = std::chrono::milliseconds{20};
    return sqlite::open_file(path(), OpenMode::create, fixed_now, options);
  }
  [[nodiscard]] std::string path() const { return folder_.file("clinic.db"); }
  [[nodiscard]] const TemporaryFolder& folder() const { return folder_; }

 private:
  TemporaryFolder folder_;
};

class SqliteMemory {
 public:
  [[nodiscard]] std::unique_ptr<Store> open() const { return open_in_memory(fixed_now); }
};

/// Every engine.
#define SPAREWELL_ENGINES SqliteFile, SqliteMemory
/// Those that several programs can open at once.
#define SPAREWELL_SHARED_ENGINES SqliteFile

/// The error of a StoreFailure that `work` throws; fails the test when there is none.
template <class Work>
StoreError error_of(Work work) {
  try {
    work();
  } catch (const StoreFailure& failure) {
    CHECK(std::string{failure.what()}.ends_with('.'));
    return failure.error();
  }
  FAIL("no StoreFailure was thrown");
  return {};
}

inline const Author anna{"anna", "a test"};

}  // namespace sparewell::store::test

TYPE_TO_STRING(sparewell::store::test::SqliteFile);
TYPE_TO_STRING(sparewell::store::test::SqliteMemory);
