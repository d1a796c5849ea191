#include "care/trip.hpp"

#include "supply/renewal.hpp"

namespace sparewell::care {

supply::Pmf failures_on(const Trip& trip, const wear::LifeOfUnit& unit,
                        supply::FreshCountsCache& fresh) {
  const wear::UnitLife& life = unit.life;
  const double before = days_between(life.today(), trip.departure);
  const double away = days_between(trip.departure, trip.last_day);
  const wear::UnitLife there = life.having_lasted_until(trip.departure);
  auto tails = supply::replacement_tails(there, away, fresh, unit.others);
  // The same chance with the law averaged over all that are possible.
  const double lasts = 1 - life.chance_after(before);
  const double by_all =
      lasts > 0 ? 1 - (1 - life.chance_after(before + away)) / lasts : there.chance_after(away);
  const double by_best = there.chance_after(away);
  if (by_best > 0) {
    for (double& tail : tails) tail *= by_all / by_best;
  }
  return supply::pmf_of_tails(tails);
}

}  // namespace sparewell::care
