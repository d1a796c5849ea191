/// How often a part may have to be replaced on a trip.
#pragma once

#include "clinic/date.hpp"
#include "supply/fresh_counts.hpp"
#include "supply/pmf.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::care {

struct Trip {
  Date departure;  ///< the last day at home
  Date last_day;   ///< of the return, a possible delay included; not before the departure
};

/// Replacements in (departure, last_day] of a unit in use, a lost one counting as a worn one, if it
/// lasts until the departure: what wears out before is replaced at home by a part that is newer,
/// so this is on the careful side for parts that wear out by age. Each replacement is worn on as
/// the unit was. How much is not known of the law enters by the chance of the first replacement.
[[nodiscard]] supply::Pmf failures_on(const Trip& trip, const wear::LifeOfUnit& unit,
                                      supply::FreshCountsCache& fresh);

}  // namespace sparewell::care
