/// What the functions that read and write inside one transaction share.
#pragma once

#include "store/sqlite/change_log.hpp"
#include "store/sqlite/connection.hpp"
#include "store/sqlite/references.hpp"

namespace sparewell::store::sqlite {

struct Session {
  explicit Session(Connection& over) : connection{over}, references{over} {}

  Connection& connection;
  References references;
};

struct WriteSession : Session {
  WriteSession(Connection& over, Author author, Clock clock)
      : Session{over}, log{over, std::move(author), std::move(clock)} {}

  ChangeLog log;
};

}  // namespace sparewell::store::sqlite
