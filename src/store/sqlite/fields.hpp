/// A record type is described once, by a function that names the column of each of its fields
/// (records/*.hpp). The visitors here turn that one description into lists of columns, bound
/// parameters, records read back, and the JSON of the change log.
#pragma once

#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>
#include <nlohmann/json.hpp>

#include "clinic/date.hpp"
#include "clinic/money.hpp"
#include "clinic/words.hpp"
#include "store/sqlite/references.hpp"

namespace sparewell::store::sqlite {

template <class T>
concept Word = std::is_enum_v<T>;

/// Names the columns, in the order of the description.
class ColumnNames {
 public:
  template <class T>
  void operator()(const char* column, const T&) {
    names_.emplace_back(column);
  }
  void operator()(const char* column, const std::optional<Money>&) {
    names_.push_back(std::string{column} + "_minor");
    names_.push_back(std::string{column} + "_currency");
  }
  void operator()(const char* column, const Money&) { (*this)(column, std::optional<Money>{}); }
  template <class R>
  void reference(const char* column, const R&) {
    names_.emplace_back(column);
  }
  template <class R>
  void reference_or_none(const char* column, const R&) {
    names_.emplace_back(column);
  }
  [[nodiscard]] const std::vector<std::string>& names() const { return names_; }

 private:
  std::vector<std::string> names_;
};

/// Binds a record to the named parameters of a statement. Throws StoreFailure{constraint} for
/// values that no column can hold, StoreFailure{not_found} for unknown references.
class Binder {
 public:
  Binder(SQLite::Statement& statement, References& references)
      : statement_{&statement}, references_{&references} {}

  void operator()(std::string_view column, const std::string& text);
  void operator()(std::string_view column, int number);
  void operator()(std::string_view column, unsigned number);
  void operator()(std::string_view column, bool truth);
  void operator()(std::string_view column, double number);
  void operator()(std::string_view column, Date date);
  void operator()(std::string_view column, const Currency& currency);
  void operator()(std::string_view column, const std::vector<std::string>& texts);
  void operator()(std::string_view column, const std::optional<Money>& money);
  void operator()(std::string_view column, const Money& money) {
    (*this)(column, std::optional{money});
  }
  template <Word W>
  void operator()(std::string_view column, W value) {
    (*this)(column, std::string{word(value)});
  }
  template <class T>
  void operator()(std::string_view column, const std::optional<T>& value) {
    if (value) {
      (*this)(column, *value);
    } else {
      nothing(column);
    }
  }
  template <class R>
  void reference(std::string_view column, const R& ref) {
    row(column, references_->row(named(ref), ref.text));
  }
  template <class R>
  void reference_or_none(std::string_view column, const R& ref) {
    ref.empty() ? nothing(column) : reference(column, ref);
  }

 private:
  void row(std::string_view column, std::int64_t id);
  void nothing(std::string_view column);
  int parameter(std::string_view column);

  SQLite::Statement* statement_;
  References* references_;
  std::string name_;
};

/// Reads a record from the columns of a result row, which are in the order of the description.
/// Throws StoreFailure{corrupt} for a value that the record cannot hold.
class Reader {
 public:
  /// `first` is the number of the column that holds the first field.
  Reader(SQLite::Statement& statement, References& references, int first)
      : statement_{&statement}, references_{&references}, next_{first} {}

  void operator()(std::string_view column, std::string& text);
  void operator()(std::string_view column, int& number);
  void operator()(std::string_view column, unsigned& number);
  void operator()(std::string_view column, bool& truth);
  void operator()(std::string_view column, double& number);
  void operator()(std::string_view column, Date& date);
  void operator()(std::string_view column, Currency& currency);
  void operator()(std::string_view column, std::vector<std::string>& texts);
  void operator()(std::string_view column, std::optional<Money>& money);
  void operator()(std::string_view column, Money& money);
  template <Word W>
  void operator()(std::string_view column, W& value) {
    const auto text = take_text();
    const auto parsed = parse_word<W>(text);
    if (!parsed) unreadable(column, text);
    value = *parsed;
  }
  template <class T>
  void operator()(std::string_view column, std::optional<T>& value) {
    if (skip_null()) return;
    (*this)(column, value.emplace());
  }
  template <class R>
  void reference(std::string_view, R& ref) {
    ref.text = references_->text(named(ref), take_number());
  }
  template <class R>
  void reference_or_none(std::string_view column, R& ref) {
    if (!skip_null()) reference(column, ref);
  }

 private:
  bool skip_null();
  std::string take_text();
  std::int64_t take_number();
  template <class Whole>
  Whole take_whole(std::string_view column);
  [[noreturn]] static void unreadable(std::string_view column, std::string_view text);

  SQLite::Statement* statement_;
  References* references_;
  int next_;
};

/// Collects a record's values as a JSON object under the names of the columns; references as the
/// clinic writes them.
class JsonWriter {
 public:
  template <class T>
  void operator()(const char* column, const T& value) {
    object_[column] = json(value);
  }
  template <class R>
  void reference(const char* column, const R& ref) {
    object_[without_id(column)] = ref.text;
  }
  template <class R>
  void reference_or_none(const char* column, const R& ref) {
    reference(column, ref);
  }
  [[nodiscard]] nlohmann::ordered_json& object() { return object_; }

  [[nodiscard]] static nlohmann::ordered_json json(const Money& money);

 private:
  using Json = nlohmann::ordered_json;

  static Json json(const std::string& text) { return text; }
  static Json json(int number) { return number; }
  static Json json(unsigned number) { return number; }
  static Json json(bool truth) { return truth; }
  static Json json(double number) { return number; }
  static Json json(Date date) { return iso_text(date); }
  static Json json(const Currency& currency) { return currency.code; }
  static Json json(const std::vector<std::string>& texts) { return texts; }
  template <Word W>
  static Json json(W value) {
    return word(value);
  }
  template <class T>
  static Json json(const std::optional<T>& value) {
    return value ? json(*value) : Json{};
  }
  static std::string without_id(std::string_view column) {
    return std::string{column.substr(0, column.rfind("_id"))};
  }

  Json object_ = Json::object();
};

}  // namespace sparewell::store::sqlite
