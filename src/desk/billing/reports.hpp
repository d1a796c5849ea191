/// The reports of billing as workbooks. They name patients by reference only.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "desk/billing/books.hpp"
#include "exchange/list_workbook.hpp"

namespace sparewell::desk {

// `books` are those of the clinic on the day.

/// What was handed out and not billed, by month of issue and payer, and part by part.
[[nodiscard]] exchange::ListWorkbook unbilled_report(const Clinic& clinic, const Books& books,
                                                     Date today);
/// Every finding with both sides, money, age, likely cause and what settles it; and their sums.
[[nodiscard]] exchange::ListWorkbook findings_report(const Clinic& clinic, const Books& books,
                                                     Date today);
/// Charges and payments less the cost of the pieces, by item and payer.
[[nodiscard]] exchange::ListWorkbook margin_report(const Clinic& clinic, const Books& books,
                                                   Date today);
/// How far suppliers' invoices are from orders and receipts, by supplier and month.
[[nodiscard]] exchange::ListWorkbook supplier_report(const Clinic& clinic, const Books& books,
                                                     Date today);

struct WrittenReport {
  std::string title;
  std::filesystem::path file;
  std::size_t rows = 0;  ///< of its first sheet
};
/// Writes all of them into the folder, which is made where there is none. Throws std::runtime_error
/// with one sentence when it cannot.
std::vector<WrittenReport> write_billing_reports(const Clinic& clinic, const Books& books,
                                                 Date today, const std::filesystem::path& folder);

}  // namespace sparewell::desk
