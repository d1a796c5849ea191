/// How suppliers keep the days that they quote, and what is still to come from each.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/table.hpp"
#include "supply/receiving.hpp"
#include "supply/supplier_record.hpp"

namespace sparewell::desk {

class SuppliersPage {
 public:
  SuppliersPage();

  void show(DayPtr day);
  /// Those that run late first; a row's id is the supplier's name.
  [[nodiscard]] Table& suppliers() { return suppliers_; }
  /// Puts into lines() what is still to come from this supplier; nothing for "".
  void choose(const std::string& supplier);
  /// The longest overdue first; strong when overdue.
  [[nodiscard]] Table& lines() { return lines_; }
  /// How many run late; that none does; or that nothing was ordered yet.
  [[nodiscard]] std::string summary() const;
  /// The chosen supplier's record as sentences; "" for none.
  [[nodiscard]] std::string words() const;
  /// What the figures are made from.
  [[nodiscard]] static std::string grounds();
  /// Supplier and number of the order that a row of lines() belongs to.
  struct OrderOf {
    SupplierName supplier;
    std::string ref;
  };
  [[nodiscard]] std::optional<OrderOf> order_of(const std::string& line) const;

 private:
  DayPtr day_;
  std::vector<supply::SupplierRecord> records_;
  std::vector<supply::ExpectedLine> expected_;
  std::string chosen_;
  Table suppliers_;
  Table lines_;
};

}  // namespace sparewell::desk
