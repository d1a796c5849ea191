/// Whether spares last on a trip on which failed parts can be had again at the place.
#pragma once

#include <span>
#include <vector>

#include "care/trip.hpp"

namespace sparewell::care {

/// At least the chance that one function of the suspension always has a working part, for 0, 1 ...
/// `most` units beside the one that must work. `units` are those in use that have the function. A
/// part that fails on a day has its replacement at the end of the day `resupply_days` >= 1 days
/// later, so that it is without one when more units fail within so many days in a row than there
/// are beside it.
///
/// Each failure on the trip is taken as a possible beginning of such days: their expected number is
///   sum over units i and days d of m_i(d) P(at least n further failures by d + resupply_days - 1),
/// where m_i is the renewal density of the unit, after which it goes on as a new one, and the other
/// units are independent of it given the person's multiplier, over which all is mixed. The chance
/// of such days is at most that number (Boole's inequality), so the answer is on the careful side;
/// it is never below the chance without resupply that the caller has by failures_on. Day by day, at
/// the mean rate of wear on the trip; losses count as wear, and nothing else ends the line.
[[nodiscard]] std::vector<double> lasting_with_resupply(const Trip& trip,
                                                        std::span<const wear::LifeOfUnit> units,
                                                        int resupply_days, int most);

}  // namespace sparewell::care
