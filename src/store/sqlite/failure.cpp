#include "store/sqlite/failure.hpp"

#include <array>

#include <sqlite3.h>

#include "clinic/say.hpp"

namespace sparewell::store::sqlite {
namespace {

/// The refusals of schema/, which the clinic file gives in English.
[[maybe_unused]] constexpr auto refusals_of_schema =
    std::to_array<const char*>({to_say("a count is never changed"),
                                to_say("a reversal is never changed"),
                                to_say("a reversal is never taken back"),
                                to_say("a revision of an order is never changed"),
                                to_say("a revision of an order is never removed"),
                                to_say("an answer is never changed"),
                                to_say("an answer is never removed"),
                                to_say("an order number is given out once"),
                                to_say("counts are never removed"),
                                to_say("order numbers are never changed"),
                                to_say("order numbers are never given back"),
                                to_say("the books of a closed month are never changed"),
                                to_say("the books of a closed month are never removed"),
                                to_say("the change log is never changed"),
                                to_say("the change log is never shortened"),
                                to_say("the closing of a month is never changed"),
                                to_say("the closing of a month is never removed"),
                                to_say("the stock ledger is never changed"),
                                to_say("the stock ledger is never shortened"),
                                to_say("the stock would fall below zero"),
                                to_say("this booking was taken back already")});

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
                  ? say("There is already such a {}: {}.", subject.shown_word(), named_in(message))
                  : say("There is already a {} with the same {}.", subject.shown_word(),
                        subject.shown_key())};
    case SQLITE_CONSTRAINT_FOREIGNKEY:
      return {
          StoreError::constraint,
          say("The {} refers to a record that is not in the clinic file.", subject.shown_word())};
    case SQLITE_CONSTRAINT_NOTNULL:
      return {StoreError::constraint,
              say("The {} lacks a value: {}.", subject.shown_word(), named_in(message))};
    case SQLITE_CONSTRAINT_TRIGGER:
      return {StoreError::constraint,
              say("The {} was not written: {}.", subject.shown_word(), said(exception.what()))};
    default:
      return {StoreError::constraint, say("The {} breaks a rule of the clinic file: {}.",
                                          subject.shown_word(), named_in(message))};
  }
}

}  // namespace

StoreFailure failure_from(const SQLite::Exception& exception, const Subject& subject) {
  switch (exception.getErrorCode() & 0xff) {
    case SQLITE_CONSTRAINT:
      return broken_rule(exception, subject);
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return {
          StoreError::busy,
          said("Another program is writing to the clinic file; nothing was written, try again in a "
               "moment.")};
    case SQLITE_FULL:
      return {StoreError::disk_full,
              said("The disk is full; nothing was written, make room and try again.")};
    case SQLITE_READONLY:
      return {
          StoreError::read_only,
          said("The clinic file may only be read; nothing was written, check who may write to the "
               "file and its folder.")};
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return {StoreError::corrupt,
              say("The clinic file is damaged ({}); restore the last backup.", exception.what())};
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
    case SQLITE_AUTH:
      return {StoreError::cannot_open,
              say("The clinic file cannot be opened ({}); check that it and its folder may "
                  "be read and written.",
                  exception.what())};
    case SQLITE_IOERR:
      return {StoreError::connection_lost,
              say("The disk of the clinic file does not answer ({}); check the disk and "
                  "open the file again.",
                  exception.what())};
    case SQLITE_TOOBIG:
      return {StoreError::constraint,
              say("The {} holds a text that is too long to be stored.", subject.shown_word())};
    default:
      return {StoreError::corrupt,
              say("The clinic file does not have the expected form ({}); restore the last "
                  "backup.",
                  exception.what())};
  }
}

}  // namespace sparewell::store::sqlite
