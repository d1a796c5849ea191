/// What to count next: cycle counting, a few shelves a day instead of everything once a year.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::supply {

/// One item at one place, with all its lots: they lie side by side and are counted together.
struct CountCandidate {
  ItemCode item;
  std::string place;
  std::vector<StockLevel> levels;    ///< by lot and use-by date
  std::optional<Money> value;        ///< on hand at the catalogue's cost; empty when not known
  int pieces = 0;                    ///< on hand
  int counts = 0;                    ///< days on which it was counted
  int wrong_counts = 0;              ///< of those, on which the count had to be corrected
  std::optional<Date> last_counted;  ///< empty: never
  double rank = 0;                   ///< see plan_counts
};

/// What has been counted before. `counts` hold counts that found what was recorded as well;
/// corrections in `movements` add days on which a folder's stock list was counted.
struct CountHistory {
  std::vector<ShelfCountRecord> counts;
  std::vector<StockMovement> movements;
};

/// Every item at every place where some of it lies, the one to count first in front; at most `most`
/// of them when that is above zero, and of one `place` when that is not "".
///
///   rank = (0.1 + 0.9 v) * e * d
///
/// v: value on hand as a share of the largest value in the same currency, 1 where no cost is known;
///    so that money counts, and yet the cheapest part comes up, since a patient may need it.
/// e: chance that the next count finds an error, (wrong + 1) / (counts + 2): the mean of a uniform
///    prior after these counts (Laplace's rule of succession); 1/2 where nothing was ever counted.
/// d: days since it was last counted, at most 730, which also stands for never: errors come in at
///    an unknown steady rate, so that what is wrong and unseen grows with the time.
///
/// To count dear, error-prone and long unseen stock more often is common practice, no source; so
/// are the weights 0.1 and 0.9 and the two years. Pure: the order of the records does not matter.
[[nodiscard]] std::vector<CountCandidate> plan_counts(const Clinic& clinic,
                                                      const CountHistory& history, Date today,
                                                      const std::string& place = {}, int most = 0);

}  // namespace sparewell::supply
