/// Keeps apart alike rows of which one was refused because a cell of its key was not understood:
/// corrected, it must not be taken for its twin that was imported before.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "desk/import/file_import.hpp"

namespace sparewell::desk {

/// Counts, for refused rows with one wrong cell in their key, the rows that agree with them in
/// every other cell of the key.
class AlikeRows {
 public:
  /// `key_columns` are the names of the columns that make the key.
  AlikeRows(const exchange::CsvFile& file, std::vector<std::string> key_columns);

  [[nodiscard]] bool any_wanted() const { return !wanted_.empty(); }
  /// The reject at this position has one wrong cell, in the key column of this name.
  void want(const exchange::CsvRow& row, const std::string& wrong_column, std::size_t reject);
  /// A row whose key was understood.
  void count(const exchange::CsvRow& row);
  /// Writes what was counted into the rejects.
  void fill(std::vector<exchange::Reject>& rejects) const;

  /// How many rows were alike when this row, now corrected, was refused; 0 when not known.
  [[nodiscard]] int before(const exchange::CsvRow& row) const;

 private:
  struct Group {
    std::map<std::string, int> counts;  ///< by the text of the cell that was wrong
    std::vector<std::size_t> rejects;
    std::string column;
  };
  [[nodiscard]] std::string group_key(const exchange::CsvRow& row, std::size_t wrong) const;

  const exchange::CsvFile& file_;
  std::vector<std::string> names_;
  std::vector<int> positions_;
  std::vector<bool> wrong_columns_;  ///< key columns in which some row was wrong
  std::map<std::string, Group> wanted_;
};

}  // namespace sparewell::desk
