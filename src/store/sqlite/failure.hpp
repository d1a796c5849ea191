/// Where errors of the SQLite library become StoreFailure: nothing else of the store names a
/// SQLite error code.
#pragma once

#include <string>
#include <string_view>
#include <utility>

#include <SQLiteCpp/Exception.h>

#include "clinic/say.hpp"
#include "store/port.hpp"

namespace sparewell::store::sqlite {

/// What was being written, for the sentence of a failure.
struct Subject {
  std::string_view word = to_say("clinic file");  ///< English: "unit", "item" ...
  std::string_view natural_key;  ///< "patient, side and delivery date"; may be empty

  /// Both in the language of the program, for a sentence.
  [[nodiscard]] std::string shown_word() const { return said(std::string{word}.c_str()); }
  [[nodiscard]] std::string shown_key() const { return said(std::string{natural_key}.c_str()); }
};

/// The failure that says the same as `exception` in words for a person.
[[nodiscard]] StoreFailure failure_from(const SQLite::Exception& exception,
                                        const Subject& subject = {});

/// Runs `work`; a SQLite::Exception leaves as StoreFailure.
template <class Work>
decltype(auto) translated(Work&& work, const Subject& subject = {}) {
  try {
    return std::forward<Work>(work)();
  } catch (const SQLite::Exception& exception) {
    throw failure_from(exception, subject);
  }
}

}  // namespace sparewell::store::sqlite
