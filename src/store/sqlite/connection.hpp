/// One connection to a clinic file, with every safety setting of ours switched on.
#pragma once

#include <chrono>
#include <string>
#include <unordered_map>

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>

namespace sparewell::store::sqlite {

/// "SPWL" read as a big-endian number: stands in the header of every clinic file.
constexpr int application_id = 0x5350574C;

constexpr std::chrono::milliseconds usual_busy_timeout{5000};

/// A prepared statement on loan: cleared when it is handed back.
class Query {
 public:
  explicit Query(SQLite::Statement& statement) : statement_{&statement} {}
  ~Query();
  Query(const Query&) = delete;
  Query& operator=(const Query&) = delete;

  SQLite::Statement* operator->() const { return statement_; }
  SQLite::Statement& operator*() const { return *statement_; }

 private:
  SQLite::Statement* statement_;
};

/// What a connection may be used for.
enum class Use { write, read };

/// Throws SQLite::Exception throughout, and StoreFailure when a safety setting did not take.
class Connection {
 public:
  /// Opens `path`, which exists (or is ":memory:").
  Connection(const std::string& path, Use use,
             std::chrono::milliseconds busy_timeout = usual_busy_timeout);
  ~Connection();
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  [[nodiscard]] SQLite::Database& database() { return database_; }

  /// The statement for `sql`, prepared at its first use. Two loans of one text must not overlap.
  [[nodiscard]] Query query(const std::string& sql);

  /// The first column of the first row of a constant question.
  [[nodiscard]] std::int64_t number(const char* sql);
  [[nodiscard]] std::string text(const char* sql);

  /// True between BEGIN and its end; an error such as a full disk ends a transaction by itself.
  [[nodiscard]] bool in_transaction() const;

  /// Switches the file to a write-ahead log, so that readers go on while one writes.
  void use_write_ahead_log();

 private:
  void configure(Use use);

  SQLite::Database database_;
  Use use_;
  std::unordered_map<std::string, SQLite::Statement> statements_;
};

}  // namespace sparewell::store::sqlite
