/// A month of the books as it was when it was closed.
#pragma once

#include <optional>
#include <string>

#include "clinic/date.hpp"
#include "clinic/money.hpp"
#include "clinic/words.hpp"

namespace sparewell {

struct MonthClose {
  Date month;      ///< its first day
  int number = 1;  ///< 1, 2 ... when it was closed again after changes
  Date closed_on;
  std::string closed_by;
  std::string note;

  friend bool operator==(const MonthClose&, const MonthClose&) = default;
};

enum class BookEntry {
  part,     ///< handed out, by the day of issue
  claim,    ///< a claim line, by the day of service
  invoice,  ///< a supplier's invoice line, by its day
  receipt,  ///< an order line, by the day of the last receipt
  payment   ///< a line of a remittance, by the day of payment
};
template <>
std::span<const std::string_view> words<BookEntry>();

/// One record of a closed month, as it was.
struct ClosedEntry {
  Date month;
  int number = 1;  ///< of the MonthClose
  BookEntry entry = BookEntry::part;
  std::string key;  ///< what the record is known by, in words
  int quantity = 0;
  std::optional<Money> amount;

  friend bool operator==(const ClosedEntry&, const ClosedEntry&) = default;
};

}  // namespace sparewell
