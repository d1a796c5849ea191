/// Stock, and what was done with it, in words: a line each.
#pragma once

#include <string>
#include <vector>

#include "clinic/clinic.hpp"
#include "desk/stock_booking.hpp"

namespace sparewell::desk {

/// What was booked and what to know of it: "2 of L1, lot A: main store to branch".
[[nodiscard]] std::vector<std::string> booked_lines(const Booked& booked);
[[nodiscard]] std::vector<std::string> movement_lines(const std::vector<StockMovement>& movements);

/// "main store: 3 of L1, lot A, use by 1 Dec 2026, use soon".
[[nodiscard]] std::string stock_line_words(const StockLevel& level, const Clinic& clinic,
                                           Date today);
/// "loan 3: 1 of L1, lot A, with P-7 (left), due 1 Dec 2026, 12 days overdue".
[[nodiscard]] std::string loan_words(const Loan& loan, Date today);
/// "return 2 to Tern (RMA-7): 3 of L1, lot A, sent 1 Nov 2026, 120.00 EUR due".
[[nodiscard]] std::string credit_words(const SupplierReturn& sent);
/// "2 of L1, lot A, in transit to branch".
[[nodiscard]] std::string transit_words(const StockLevel& level);
/// "booking 12, 25 Nov 2026, anna: why", and below it what it moved of the item.
[[nodiscard]] std::vector<std::string> booking_lines(const store::Booking& booking,
                                                     const ItemCode& item);
/// Those of the item.
[[nodiscard]] std::vector<StockMovement> movements_of(const store::Booking& booking,
                                                      const ItemCode& item);
/// "branch: store".
[[nodiscard]] std::string place_words(const Place& place);

}  // namespace sparewell::desk
