#include <cmath>

#include "wear/exposure.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::wear {
namespace {

std::vector<RateSpan> future_rates(const std::vector<UsageSpan>& usage, const FactorVector& beta,
                                   double share, Date today) {
  std::vector<RateSpan> rates;
  for (std::size_t i = span_on(usage, today); i < usage.size(); ++i) {
    const Date from = rates.empty() ? std::min(today, usage[i].from) : usage[i].from;
    rates.push_back({from, share * std::exp(log_wear_rate(usage[i].factors, beta))});
  }
  return rates;
}

bool in_use_at_end_of(const Unit& unit, Date today) {
  return unit.issued_on <= today && (!unit.ended_on || *unit.ended_on > today);
}

}  // namespace

std::vector<LifeOfUnit> lives_of_units_in_use(const Clinic& clinic, const ClinicLife& fitted,
                                              Date today) {
  const ClinicIndex index{clinic};
  const Exposures exposures{clinic, index, today};
  std::vector<LifeOfUnit> lives;
  for (std::size_t i = 0; i < clinic.units.size(); ++i) {
    const Unit& unit = clinic.units[i];
    const Item* item = index.item(unit.item);
    if (!item || !in_use_at_end_of(unit, today)) continue;
    const KindLife& kind = fitted.kinds.at(item->kind);
    const double share = exposures.alternation().share_on(unit, item->kind, today);
    lives.push_back({i, UnitLife{today, wear_age(exposures.of(unit, item->kind), kind.beta),
                                 kind.shape, scale_days(kind, item->material),
                                 future_rates(exposures.usage().spans(unit.patient), kind.beta,
                                              share, today)}});
  }
  return lives;
}

}  // namespace sparewell::wear
