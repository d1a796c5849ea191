#include "store/sqlite/connection.hpp"

#include <SQLiteCpp/Column.h>
#include <sqlite3.h>

#include "clinic/say.hpp"
#include "store/port.hpp"

namespace sparewell::store::sqlite {

Query::~Query() {
  statement_->tryReset();
  statement_->clearBindings();
}

Connection::Connection(const std::string& path, Use use, std::chrono::milliseconds busy_timeout)
    : database_{path, SQLite::OPEN_READWRITE | SQLite::OPEN_NOMUTEX,
                static_cast<int>(busy_timeout.count())},
      use_{use} {
  configure(use);
}

Connection::~Connection() {
  statements_.clear();
  if (use_ == Use::write && !in_transaction()) {
    database_.tryExec("PRAGMA analysis_limit = 400; PRAGMA optimize");
  }
}

void Connection::configure(Use use) {
  struct Setting {
    int name;
    int wanted;
  };
  // Without DQS off, a misspelt "column" would be read as a text.
  for (const auto& [name, wanted] :
       {Setting{SQLITE_DBCONFIG_DQS_DML, 0}, Setting{SQLITE_DBCONFIG_DQS_DDL, 0},
        Setting{SQLITE_DBCONFIG_DEFENSIVE, 1}, Setting{SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0}}) {
    int now = -1;
    sqlite3_db_config(database_.getHandle(), name, wanted, &now);
    if (now != wanted) {
      throw StoreFailure{StoreError::cannot_open,
                         said("The SQLite library of this computer lacks a safety setting; install "
                              "version 3.31 or newer.")};
    }
  }
  database_.exec("PRAGMA foreign_keys = ON");
  if (number("PRAGMA foreign_keys") != 1) {
    throw StoreFailure{
        StoreError::cannot_open,
        said("The SQLite library of this computer does not check references; install "
             "one that does.")};
  }
  database_.exec("PRAGMA synchronous = FULL; PRAGMA cache_size = -65536");
  if (use == Use::read) database_.exec("PRAGMA query_only = ON");
}

Query Connection::query(const std::string& sql) {
  auto found = statements_.find(sql);
  if (found == statements_.end()) {
    found = statements_.emplace(sql, SQLite::Statement{database_, sql}).first;
  }
  return Query{found->second};
}

std::int64_t Connection::number(const char* sql) {
  return database_.execAndGet(sql).getInt64();
}

std::string Connection::text(const char* sql) {
  return database_.execAndGet(sql).getString();
}

bool Connection::in_transaction() const {
  return sqlite3_get_autocommit(database_.getHandle()) == 0;
}

void Connection::use_write_ahead_log() {
  if (text("PRAGMA journal_mode = WAL") != "wal") {
    throw StoreFailure{
        StoreError::cannot_open,
        said("The folder of the clinic file does not allow several programs to share it; "
             "move the file to a disk of this computer.")};
  }
}

}  // namespace sparewell::store::sqlite
