/// How suppliers keep the days that they quote.
#pragma once

#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::supply {

/// Receipts of the last so many days count (our choice).
inline constexpr int record_days = 730;
/// Fewer receipts say nothing about a supplier (our choice).
inline constexpr int least_receipts = 5;

struct SupplierRecord {
  SupplierName supplier;
  int receipts = 0;        ///< order lines received in full
  double quoted_days = 0;  ///< mean, by what the catalogue quotes or, without that, what is assumed
  double taken_days = 0;   ///< mean, from order to last receipt
  int late = 0;            ///< receipts after the quoted day
  int nine_in_ten_days_late =
      0;  ///< nine in ten receipts were not later than that; may be negative
  int open_lines = 0;
  int overdue_lines = 0;  ///< open ones whose quoted day has passed
  /// On average later than quoted by more than chance explains: the mean of days late lies more
  /// than 1.645 standard errors above 0, with least_receipts at least (one-sided test at 5 %, a
  /// standard result).
  bool runs_late = false;
};

/// Suppliers with receipts or open lines, those that run late first, then by name.
[[nodiscard]] std::vector<SupplierRecord> supplier_records(const Clinic& clinic, Date today);

}  // namespace sparewell::supply
