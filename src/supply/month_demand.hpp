/// Pieces of each item that will be needed, month by month.
#pragma once

#include <functional>
#include <vector>

#include "clinic/clinic.hpp"
#include "supply/pmf.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::supply {

/// Days of one calendar month that lie after today.
struct Month {
  Date from;  ///< the first day
  Date to;    ///< the last day of the month
  friend bool operator==(const Month&, const Month&) = default;
};

/// What is left of the current month after today, and the `count` months after it; on the last day
/// of a month those months alone.
[[nodiscard]] std::vector<Month> months_ahead(Date today, int count);

struct MonthNeed {
  double mean = 0;  ///< pieces
  Pmf pieces;       ///< how many pieces, with their chances
};

struct ItemMonths {
  ItemCode item;
  std::vector<MonthNeed> months;  ///< as `months` given
};

/// Told how much of the work is done, from 0 to 1; false stops it.
using MonthsGoOn = std::function<bool(double done)>;

/// For every item that is needed by anyone, by code. `months` must follow each other without a gap
/// from the day after today.
///
/// The mean of a month is that of ItemDemand::until() at its end less that at its beginning, summed
/// over users. Its chances: the users of an item are independent, and each needs the whole part of
/// their mean in the month, and with the chance of the rest one piece more; patients who begin come
/// on top (new_starts.hpp). Booked pieces are certain in the month of their day, those without a
/// day or overdue in the first; a unit that one replaces is left to chance in the months before
/// (booked.hpp). For a part that can hardly end twice in a month this is the exact law
/// (the sum of unlike coins, Poisson-binomial); where it can, the spread comes out a little too
/// small.
///
/// `goes_on`, where given, is asked after each item, by one thread at a time; nothing is returned
/// when it stops the work.
[[nodiscard]] std::vector<ItemMonths> demand_by_month(const Clinic& clinic,
                                                      const std::vector<wear::LifeOfUnit>& lives,
                                                      Date today, const std::vector<Month>& months,
                                                      const MonthsGoOn& goes_on = {});

}  // namespace sparewell::supply
