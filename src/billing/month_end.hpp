/// The books of a month as they are, and what has changed since they were closed.
#pragma once

#include <map>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::billing {

/// The first day of the month after, or before.
[[nodiscard]] Date month_of(Date day);
[[nodiscard]] Date month_after(Date month);

/// Every record of the month that counts in the books, with the key by which it is known: parts by
/// the day of issue with the item's cost of today, claim lines by the day of service with their
/// charge, invoice lines by their day with quantity x unit cost and the freight as an entry of its
/// own, receipts by the last day of receipt with received quantity x unit cost, and remittance
/// lines by the day of payment with what was paid. In order of entry and key. An amount that is not
/// known is empty. Records without a day are in no month.
[[nodiscard]] std::vector<ClosedEntry> book_entries(const Clinic& clinic, Date month);

/// Sum of the amounts that are known, and how many are not.
struct EntryTotal {
  BookEntry entry = BookEntry::part;
  Currency currency;
  int records = 0;
  int quantity = 0;
  Money sum;
};
struct EntryTotals {
  std::vector<EntryTotal> totals;           ///< by entry and currency
  std::map<BookEntry, int> without_amount;  ///< records
};
[[nodiscard]] EntryTotals totals_of(const std::vector<ClosedEntry>& entries);

/// One record that is not as it was. With `before` alone it is gone, with `after` alone it was
/// added.
struct BookChange {
  std::optional<ClosedEntry> before;
  std::optional<ClosedEntry> after;

  /// After less before; an entry that is not there counts as nothing. Nullopt when an amount is not
  /// known or the currencies differ.
  [[nodiscard]] std::optional<Money> difference() const;
};

struct ChangesSinceClose {
  std::vector<BookChange> changes;  ///< by entry and key
  /// Parts that are worth something else by today's catalogue: nothing that was booked has changed.
  std::vector<BookChange> revalued;
};

/// `closed` are the entries of the last close of the month, `now` those of book_entries.
[[nodiscard]] ChangesSinceClose changes_since_close(const std::vector<ClosedEntry>& closed,
                                                    const std::vector<ClosedEntry>& now);

}  // namespace sparewell::billing
