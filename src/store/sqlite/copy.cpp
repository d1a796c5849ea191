#include "store/sqlite/copy.hpp"

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/Column.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <stdio.h>
#include <unistd.h>

#include "clinic/say.hpp"
#include "store/port.hpp"
#include "store/sqlite/failure.hpp"
#include "store/sqlite/file_check.hpp"

namespace sparewell::store::sqlite {
namespace {

namespace fs = std::filesystem;

StoreFailure cannot_write(const std::string& path, int error) {
  const auto kind = error == ENOSPC                     ? StoreError::disk_full
                    : error == EROFS || error == EACCES ? StoreError::read_only
                                                        : StoreError::cannot_open;
  return {kind, say("The copy {} cannot be written: {}.", path, std::strerror(error))};
}

/// A file beside the target, readable by its owner only; gone at the end unless renamed.
class TemporaryFile {
 public:
  explicit TemporaryFile(const std::string& target) : path_{target + ".part-XXXXXX"} {
    const int file = ::mkstemp(path_.data());
    if (file < 0) throw cannot_write(target, errno);
    ::close(file);
  }
  ~TemporaryFile() {
    std::error_code ignored;
    for (const char* suffix : {"", "-journal", "-wal", "-shm"}) fs::remove(path_ + suffix, ignored);
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;

  [[nodiscard]] const std::string& path() const { return path_; }

  void flush() const {
    const int file = ::open(path_.c_str(), O_RDWR | O_CLOEXEC);
    const bool done = file >= 0 && ::fsync(file) == 0;
    const int error = errno;
    if (file >= 0) ::close(file);
    if (!done) throw cannot_write(path_, error);
  }

 private:
  std::string path_;
};

void run_backup(SQLite::Database& target, SQLite::Database& source) {
  // Another connection to the target cannot exist; the source may be busy for a moment.
  constexpr int attempts = 50;
  SQLite::Backup backup{target, source};
  for (int attempt = 0; backup.getRemainingPageCount() != 0 || attempt == 0; ++attempt) {
    if (attempt == attempts) {
      throw StoreFailure{
          StoreError::busy,
          said("Another program is writing to the clinic file; no copy was made, try "
               "again in a moment.")};
    }
    backup.executeStep(-1);
  }
}

void check_copy(Connection& copy) {
  // A copy has no writers: without a log beside it, it can be moved as one file.
  if (copy.text("PRAGMA journal_mode = DELETE") != "delete") {
    throw StoreFailure{StoreError::cannot_open, said("The copy could not be closed; try again.")};
  }
  if (const auto damage = structural_damage(copy); !damage.empty()) {
    throw StoreFailure{
        StoreError::corrupt,
        say("No copy was made, because the clinic file is damaged: {}", damage.front())};
  }
}

void check_target(const std::string& target, Existing existing) {
  std::error_code ignored;
  for (const char* suffix : {"-wal", "-journal"}) {
    if (fs::exists(target + suffix, ignored)) {
      throw StoreFailure{StoreError::cannot_open,
                         say("{} is in use by a program; choose another name.", target)};
    }
  }
  if (existing == Existing::keep) return;
  constexpr int any_version = 0x7FFFFFFF;
  if (look_at(target, any_version) == FileState::empty) {
    throw StoreFailure{StoreError::not_a_clinic,
                       say("{} exists and is not a clinic file; choose another name.", target)};
  }
}

void put_in_place(const std::string& from, const std::string& target, Existing existing) {
  const unsigned flags = existing == Existing::keep ? RENAME_NOREPLACE : 0U;
  if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, target.c_str(), flags) != 0) {
    throw cannot_write(target, errno);
  }
  const auto folder = fs::absolute(target).parent_path();
  const int file = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (file < 0) return;
  ::fsync(file);  // the copy itself is safe already; a folder that cannot be flushed is no failure
  ::close(file);
}

}  // namespace

void copy_database(Connection& source, const std::string& target, Existing existing) {
  check_target(target, existing);
  const TemporaryFile temporary{target};
  {
    SQLite::Database raw{temporary.path(), SQLite::OPEN_READWRITE};
    run_backup(raw, source.database());
  }
  {
    Connection copy{temporary.path(), Use::write};
    check_copy(copy);
  }
  temporary.flush();
  put_in_place(temporary.path(), target, existing);
}

std::string copy_before_upgrade(Connection& source, const std::string& path) {
  std::error_code ignored;
  std::string target;
  int number = 0;
  do {
    target = fmt::format("{}.before-upgrade-{}.db", path, ++number);
  } while (fs::exists(target, ignored));
  copy_database(source, target, Existing::keep);
  return target;
}

std::vector<std::string> structural_damage(Connection& connection) {
  std::vector<std::string> found;
  const auto integrity = connection.query("PRAGMA integrity_check(20)");
  while (integrity->executeStep()) {
    const auto line = integrity->getColumn(0).getString();
    if (line != "ok") found.push_back(say("The file is damaged: {}.", line));
  }
  const auto references = connection.query("PRAGMA foreign_key_check");
  while (references->executeStep()) {
    found.push_back(say("Row {} of {} refers to a row of {} that is missing.",
                        references->getColumn(1).getInt64(), references->getColumn(0).getString(),
                        references->getColumn(2).getString()));
  }
  return found;
}

void copy_into(Connection& source, Connection& target) {
  run_backup(target.database(), source.database());
}

}  // namespace sparewell::store::sqlite
