#include "store/sqlite/failure.hpp"

#include <fmt/format.h>
#include <sqlite3.h>

namespace sparewell::store::sqlite {
namespace {

/// The part of a library message after its first ": ": the rule or columns that it names.
std::string_view named_in(std::string_view message) {
  const auto at = message.find(": ");
  return at == std::string_view::npos ? message : message.substr(at + 2);
}

StoreFailure broken_rule(const SQLite::Exception& exception, const Subject& subject) {
  const std::string_view message = exception.what();
  switch (exception.getExtendedErrorCode()) {
    case SQLITE_CONSTRAINT_UNIQUE:
    case SQLITE_CONSTRAINT_PRIMARYKEY:
      return {StoreError::constraint,
              subject.natural_key.empty()
                  ? fmt::format("There is already such a {}: {}.", subject.word, named_in(message))
                  : fmt::format("There is already a {} with the same {}.", subject.word,
                                subject.natural_key)};
    case SQLITE_CONSTRAINT_FOREIGNKEY:
      return {
          StoreError::constraint,
          fmt::format("The {} refers to a record that is not in the clinic file.", subject.word)};
    case SQLITE_CONSTRAINT_NOTNULL:
      return {StoreError::constraint,
              fmt::format("The {} lacks a value: {}.", subject.word, named_in(message))};
    case SQLITE_CONSTRAINT_TRIGGER:
      return {StoreError::constraint,
              fmt::format("The {} was not written: {}.", subject.word, message)};
    default:
      return {StoreError::constraint, fmt::format("The {} breaks a rule of the clinic file: {}.",
                                                  subject.word, named_in(message))};
  }
}

}  // namespace

StoreFailure failure_from(const SQLite::Exception& exception, const Subject& subject) {
  switch (exception.getErrorCode() & 0xff) {
    case SQLITE_CONSTRAINT:
      return broken_rule(exception, subject);
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return {StoreError::busy,
              "Another program is writing to the clinic file; nothing was written, try again in a "
              "moment."};
    case SQLITE_FULL:
      return {StoreError::disk_full,
              "The disk is full; nothing was written, make room and try again."};
    case SQLITE_READONLY:
      return {StoreError::read_only,
              "The clinic file may only be read; nothing was written, check who may write to the "
              "file and its folder."};
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return {StoreError::corrupt,
              fmt::format("The clinic file is damaged ({}); restore the last backup.",
                          exception.what())};
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
    case SQLITE_AUTH:
      return {StoreError::cannot_open,
              fmt::format("The clinic file cannot be opened ({}); check that it and its folder may "
                          "be read and written.",
                          exception.what())};
    case SQLITE_IOERR:
      return {StoreError::connection_lost,
              fmt::format("The disk of the clinic file does not answer ({}); check the disk and "
                          "open the file again.",
                          exception.what())};
    case SQLITE_TOOBIG:
      return {StoreError::constraint,
              fmt::format("The {} holds a text that is too long to be stored.", subject.word)};
    default:
      return {StoreError::corrupt,
              fmt::format("The clinic file does not have the expected form ({}); restore the last "
                          "backup.",
                          exception.what())};
  }
}

}  // namespace sparewell::store::sqlite
