/// The meaning of a GS1 barcode's fields.
#pragma once

#include <vector>

#include "clinic/refusal.hpp"
#include "exchange/barcode/label.hpp"

namespace sparewell::exchange {

/// Whether the fields were separated beyond doubt.
enum class Separation {
  by_scanner,     ///< a separator that got lost shows only in odd values
  by_parentheses  ///< as on paper
};

/// Item number from (01), (02) or (8006), lot (10), serial (21), use-by (17) or (7003), manufacture
/// (11), pieces (30) or (37). Refuses dates that no calendar has, and fields that contradict each
/// other. A best-before or sell-by date is not a use-by date.
[[nodiscard]] Expected<Label> gs1_label(std::vector<Element> elements, Separation separation,
                                        Date today);

/// A trade item number of 8, 12, 13 or 14 digits as 14 digits; refuses a wrong check digit, saying
/// which was read and which was expected.
[[nodiscard]] Expected<std::string> gtin_of_digits(std::string_view digits);

}  // namespace sparewell::exchange
