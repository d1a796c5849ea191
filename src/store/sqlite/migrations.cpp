#include "store/sqlite/migrations.hpp"

#include <charconv>
#include <stdexcept>

#include <SQLiteCpp/Transaction.h>
#include <fmt/format.h>

#include "clinic/say.hpp"
#include "sqlite_schema.hpp"
#include "store/port.hpp"
#include "store/sqlite/failure.hpp"

namespace sparewell::store::sqlite {
namespace {

std::vector<Migration> embedded_migrations() {
  std::vector<Migration> migrations;
  for (std::size_t i = 0; i < embedded_text_count; ++i) {
    const auto& [name, text] = embedded_texts[i];
    Migration migration{0, std::string{text}};
    std::from_chars(name.data(), name.data() + name.size(), migration.version);
    if (migration.version != static_cast<int>(i) + 1) {
      throw std::logic_error{fmt::format("schema file {} is out of order", name)};
    }
    migrations.push_back(std::move(migration));
  }
  return migrations;
}

void run_step(Connection& connection, const Migration& migration) {
  SQLite::Transaction transaction{connection.database(), SQLite::TransactionBehavior::IMMEDIATE};
  // Another program may have taken the step while this one waited.
  if (file_version(connection) >= migration.version) return;
  connection.database().exec(migration.sql);
  const auto broken = connection.query("PRAGMA foreign_key_check");
  if (broken->executeStep()) {
    throw StoreFailure{StoreError::constraint,
                       said("A record would refer to one that is missing.")};
  }
  connection.database().exec(fmt::format("PRAGMA application_id = {}; PRAGMA user_version = {}",
                                         application_id, migration.version));
  transaction.commit();
}

}  // namespace

const std::vector<Migration>& our_migrations() {
  static const auto migrations = embedded_migrations();
  return migrations;
}

int last_version(std::span<const Migration> migrations) {
  return migrations.empty() ? 0 : migrations.back().version;
}

std::int64_t file_version(Connection& connection) {
  return connection.number("PRAGMA user_version");
}

void migrate(Connection& connection, std::span<const Migration> migrations) {
  // Rebuilding a table needs references unchecked, which only works outside a transaction.
  connection.database().exec("PRAGMA foreign_keys = OFF");
  for (const auto& migration : migrations) {
    try {
      translated([&] { run_step(connection, migration); });
    } catch (const StoreFailure& failure) {
      throw StoreFailure{failure.error(),
                         say("The clinic file could not be brought to form {} and is as it "
                             "was before: {}",
                             migration.version, failure.what())};
    }
  }
  connection.database().exec("PRAGMA foreign_keys = ON");
}

}  // namespace sparewell::store::sqlite
