/// The list of the page "Patients".
#pragma once

#include <string>

#include "desk/day.hpp"
#include "desk/table.hpp"

namespace sparewell::desk {

class PatientList {
 public:
  /// Bit of Table::require: patients with a part in use.
  static constexpr unsigned has_parts = 1;

  PatientList();

  void show(const DayPtr& day);
  /// Those of patient_rows, where they have been prepared.
  void show(std::vector<TableRow> rows);
  /// A row's id is the patient's reference. The find box looks in reference, name, branch, item
  /// codes, serial and lot numbers of everything the patient ever had.
  [[nodiscard]] Table& table() { return table_; }
  [[nodiscard]] const Table& table() const { return table_; }
  /// "12 of 340 patients".
  [[nodiscard]] std::string count_shown() const;
  [[nodiscard]] std::string empty_words() const;

 private:
  bool loaded_ = false;
  Table table_;
};

/// The rows of the list; slow enough for a background job when there are many patients.
[[nodiscard]] std::vector<TableRow> patient_rows(const Day& day);

}  // namespace sparewell::desk
