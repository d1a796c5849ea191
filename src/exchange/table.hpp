/// A clinic file as a table of columns, each with the way it is read into a record.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "exchange/cell.hpp"

namespace sparewell::exchange {

/// Whether a cell may be blank. A column that is needed must be in the header as well.
enum class Need { required, optional };

/// What is wrong with a row: the column ("" for the row as a whole) and what to do.
struct Fault {
  std::string column;
  std::string reason;
};

template <class Record>
struct Column {
  std::string name;
  Need need = Need::optional;
  bool in_key = false;  ///< part of the record's natural key
  std::function<Reason(Record&, const Cell&)> read;
  /// Copies this column's value from a stored record, for files that lack the column.
  std::function<void(Record&, const Record&)> keep;

  /// The same column as part of the natural key.
  [[nodiscard]] Column key() && {
    in_key = true;
    return std::move(*this);
  }
};

template <class Record>
struct Table {
  std::string file;  ///< "issued.csv"
  std::vector<Column<Record>> columns;
  bool copies = false;  ///< alike rows are numbered; an optional column "copy" gives the number
  bool has_amounts = false;  ///< some column depends on the row's currency
  /// Sets what depends on the row's currency alone, before any column is read. May be empty.
  std::function<void(Record&, const Currency&)> start = {};
  /// Completes the record and checks columns against each other. May be empty.
  std::function<std::optional<Fault>(Record&)> check = {};
  /// Something doubtful that is no ground for refusal; "" for nothing. May be empty.
  std::function<std::string(const Record&)> doubt = {};
};

template <class Member>
struct ValueOf {
  using type = Member;
};
template <class Value>
struct ValueOf<std::optional<Value>> {
  using type = Value;
};

/// A column that is read into one member by `read(const Cell&, value&)`.
template <class Record, class Member, class Read>
[[nodiscard]] Column<Record> column(std::string name, Need need, Member Record::*member,
                                    Read read) {
  Column<Record> made;
  made.name = std::move(name);
  made.need = need;
  made.read = [member, read](Record& record, const Cell& cell) {
    typename ValueOf<Member>::type value{};
    auto reason = read(cell, value);
    if (reason.empty()) record.*member = std::move(value);
    return reason;
  };
  made.keep = [member](Record& to, const Record& from) { to.*member = from.*member; };
  return made;
}

/// A column that names something: a reference or a plain text without line breaks.
template <class Record, class Member>
[[nodiscard]] Column<Record> name_column(std::string name, Need need, Member Record::*member) {
  return column(std::move(name), need, member,
                [](const Cell& cell, Member& value) { return read_name(cell, value); });
}

/// A column with a word of a closed list.
template <class Record, class Member>
[[nodiscard]] Column<Record> word_column(std::string name, Need need, Member Record::*member) {
  return column(std::move(name), need, member, read_word<typename ValueOf<Member>::type>);
}

}  // namespace sparewell::exchange
