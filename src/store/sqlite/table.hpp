/// The statements for one record type, made from its description.
#pragma once

#include <string>

#include <fmt/format.h>

#include "store/sqlite/failure.hpp"
#include "store/sqlite/fields.hpp"

namespace sparewell::store::sqlite {

/// Specialised in records/*.hpp: `subject` (the record in words), `name` (of the table) and
/// `describe(fields, record)`, which calls `fields` for each column in turn.
template <class Record>
struct Table;

template <class Record>
[[nodiscard]] std::vector<std::string> columns() {
  ColumnNames names;
  const Record record{};
  Table<Record>::describe(names, record);
  return names.names();
}

template <class Record>
[[nodiscard]] std::string select_sql() {
  return fmt::format("SELECT id, {} FROM {}", fmt::join(columns<Record>(), ", "),
                     Table<Record>::name);
}

template <class Record>
[[nodiscard]] std::string insert_sql() {
  const auto names = columns<Record>();
  return fmt::format("INSERT INTO {} ({}) VALUES (:{})", Table<Record>::name,
                     fmt::join(names, ", "), fmt::join(names, ", :"));
}

template <class Record>
[[nodiscard]] std::string update_sql() {
  std::string assignments;
  for (const auto& name : columns<Record>()) {
    assignments += fmt::format("{}{} = :{}", assignments.empty() ? "" : ", ", name, name);
  }
  return fmt::format("UPDATE {} SET {} WHERE id = :id", Table<Record>::name, assignments);
}

}  // namespace sparewell::store::sqlite
