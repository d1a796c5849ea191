/// Pieces sent back to their supplier, and the credit that is due for them.
#pragma once

#include <optional>
#include <string>

#include "clinic/money.hpp"
#include "clinic/stock.hpp"

namespace sparewell {

struct SupplierReturn {
  int number = 0;  ///< given out by the clinic file: 1, 2, 3 ...
  SupplierName supplier;
  std::string reference;  ///< under which the supplier takes them back, or our own
  Lot lot;
  int quantity = 0;  ///< pieces sent
  std::string reason;
  Date sent_on;
  std::optional<Money> due;       ///< for all pieces; empty when not known
  std::optional<Money> credited;  ///< so far; empty while nothing was
  std::optional<Date> closed_on;  ///< empty while more is expected

  [[nodiscard]] bool is_open() const { return !closed_on; }
  /// What is still to come; empty when what is due is not known.
  [[nodiscard]] std::optional<Money> outstanding() const {
    if (!due || !credited) return due;
    return Money{due->minor - credited->minor, due->currency};
  }
  friend bool operator==(const SupplierReturn&, const SupplierReturn&) = default;
};

}  // namespace sparewell
