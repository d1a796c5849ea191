#include "store/open.hpp"

#include <SQLiteCpp/Column.h>

#include "clinic/say.hpp"
#include "store/sqlite/copy.hpp"
#include "store/sqlite/failure.hpp"
#include "store/sqlite/file_check.hpp"
#include "store/sqlite/open_with.hpp"
#include "store/sqlite/store.hpp"

namespace sparewell::store {
namespace sqlite {
namespace {

bool holds_nothing(Connection& connection) {
  return connection.number("SELECT COUNT(*) FROM sqlite_schema") == 0 &&
         connection.number("PRAGMA application_id") == 0 && file_version(connection) == 0;
}

void check_head(Connection& connection, const std::string& path, int our_version) {
  if (connection.number("PRAGMA application_id") != application_id) {
    throw StoreFailure{StoreError::not_a_clinic,
                       say("{} is a database of another program, not a Sparewell clinic "
                           "file; nothing was changed in it.",
                           path)};
  }
  check_version(file_version(connection), our_version);
}

void check_content(Connection& connection, const std::string& path) {
  const auto answer = connection.text("PRAGMA quick_check(1)");
  if (answer != "ok") {
    throw StoreFailure{StoreError::corrupt,
                       say("{} is damaged ({}); restore the last backup.", path, answer)};
  }
}

void make_new(Connection& connection, std::span<const Migration> migrations) {
  connection.use_write_ahead_log();
  migrate(connection, migrations);
  // The header is to say at once what the file is.
  connection.database().tryExec("PRAGMA wal_checkpoint(TRUNCATE)");
}

void upgrade(Connection& connection, const std::string& path,
             std::span<const Migration> migrations) {
  if (file_version(connection) == last_version(migrations)) return;
  const auto copy = copy_before_upgrade(connection, path);
  try {
    migrate(connection, migrations);
  } catch (const StoreFailure& failure) {
    throw StoreFailure{failure.error(), say("{} A copy made before is {}.", failure.what(), copy)};
  }
}

}  // namespace

std::unique_ptr<Store> open_file(const std::string& path, OpenMode mode, Clock clock,
                                 const Options& options) {
  const auto our_version = last_version(options.migrations);
  check_folder(path);
  const auto state = look_at(path, our_version);
  if (state != FileState::clinic_file && mode != OpenMode::create) {
    throw StoreFailure{
        state == FileState::missing ? StoreError::cannot_open : StoreError::not_a_clinic,
        say("There is no clinic file at {}; check the name, or make a new "
            "one.",
            path)};
  }
  if (state == FileState::missing) make_empty_file(path);
  return translated([&] {
    auto writer = std::make_unique<Connection>(path, Use::write, options.busy_timeout);
    if (mode == OpenMode::create && holds_nothing(*writer)) {
      make_new(*writer, options.migrations);
    } else {
      check_head(*writer, path, our_version);
      if (mode != OpenMode::again) check_content(*writer, path);
      writer->use_write_ahead_log();
      upgrade(*writer, path, options.migrations);
    }
    return make_store(
        {path, std::move(writer), std::move(clock), options.busy_timeout, our_version});
  });
}

}  // namespace sqlite

std::unique_ptr<Store> open_clinic_file(const std::string& path, OpenMode mode, Clock clock) {
  return sqlite::open_file(path, mode, std::move(clock), {});
}

std::unique_ptr<Store> open_in_memory(Clock clock) {
  return sqlite::translated([&] {
    auto writer = std::make_unique<sqlite::Connection>(":memory:", sqlite::Use::write);
    sqlite::migrate(*writer, sqlite::our_migrations());
    return sqlite::make_store({"", std::move(writer), std::move(clock), sqlite::usual_busy_timeout,
                               sqlite::last_version(sqlite::our_migrations())});
  });
}

}  // namespace sparewell::store
