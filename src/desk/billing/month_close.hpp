/// Closing a month of the books, and looking at what has changed in it since.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "billing/month_end.hpp"
#include "billing/worklist.hpp"
#include "clinic/refusal.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

/// A closed month with its records as they were.
struct MonthBooks {
  MonthClose close;
  std::vector<ClosedEntry> entries;
};

struct MonthCloseRequest {
  Date month;  ///< its first day
  std::string by;
  std::string note;
};

/// Keeps every record of the month as it is now. A month that was closed before gets the next
/// number. Refuses, writing nothing: a month that is not over, one without any record, no name, one
/// that was closed before and has not changed since.
[[nodiscard]] Expected<MonthBooks> close_month(store::UnitOfWork& work,
                                               const MonthCloseRequest& request, Date today);

/// All that were closed, by month and number.
[[nodiscard]] std::vector<MonthBooks> closed_months(const store::Snapshot& snapshot);

struct MonthChanges {
  MonthClose close;  ///< the last one of the month
  billing::ChangesSinceClose since;
};
/// Refuses a month that was never closed.
[[nodiscard]] Expected<MonthChanges> changes_of_month(const store::Snapshot& snapshot, Date month);

/// Findings of the month or earlier that are not settled.
[[nodiscard]] int open_until(std::span<const billing::WorkItem> items, Date month);

/// What changed, in money by entry and currency: the differences that are known.
[[nodiscard]] std::vector<billing::EntryTotal> sums_of(
    const std::vector<billing::BookChange>& changes);

}  // namespace sparewell::desk
