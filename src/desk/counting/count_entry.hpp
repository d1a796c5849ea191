/// A count beside the records: what differs, and booking it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/money.hpp"
#include "desk/counting/count_sheet_file.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

struct CountFinding {
  CountEntry entry;  ///< with the lot as it is known
  int recorded = 0;  ///< by the ledger now
  std::optional<Money> unit_cost;
  /// The ledger has changed since the sheet was written, and differs from the count: nobody can
  /// tell from the figures whether the count was before or after.
  bool moved = false;
  bool booked = false;

  [[nodiscard]] int difference() const { return entry.counted - recorded; }
  /// At the catalogue's cost; empty when that is not known.
  [[nodiscard]] std::optional<Money> value() const;
};

struct CountReview {
  std::vector<CountFinding> findings;  ///< in the order of the entries
  std::vector<RefusedCount> refused;   ///< those of the file too, by row
  int blank = 0;

  [[nodiscard]] int differing() const;
  [[nodiscard]] int moved() const;
  [[nodiscard]] int booked() const;
};

/// Compares with what is stored now. A row without a use-by date means the lot as it is known. A
/// row is refused whose item is unknown, whose lot is known with another use-by date, or which
/// counts a lot that another row counts.
[[nodiscard]] CountReview review_count(const store::Snapshot& snapshot, const CountSheet& sheet);

struct CountBooking {
  std::string counted_by;
  bool accept_moved = false;  ///< whoever counted looked after the movements: book those rows too
};

/// The same, and books in one unit of work every row that is neither refused nor moved: the count
/// is kept, and a difference becomes a count correction that says who counted. Throws
/// store::StoreFailure, and then nothing is booked.
[[nodiscard]] CountReview book_count(store::Store& store, const CountSheet& sheet,
                                     const CountBooking& booking, Date today,
                                     const store::Author& author);

}  // namespace sparewell::desk
