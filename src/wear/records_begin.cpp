#include "wear/records_begin.hpp"

#include <algorithm>
#include <cmath>

#include "wear/exposure.hpp"

namespace sparewell::wear {
namespace {

std::optional<Date> first_ending(const Clinic& clinic, Date today) {
  std::optional<Date> first;
  for (const Unit& unit : clinic.units) {
    if (!unit.ended_on || *unit.ended_on > today || unit.issued_on > today) continue;
    if (!first || *unit.ended_on < *first) first = unit.ended_on;
  }
  return first;
}

}  // namespace

std::optional<Date> suspected_records_begin(const Clinic& clinic, const ClinicLife& fitted,
                                            Date today) {
  const auto first = first_ending(clinic, today);
  if (!first) return std::nullopt;
  const ClinicIndex index{clinic};
  const Exposures exposures{clinic, index, today, first};
  const Exposures without{clinic, index, today};
  double expected = 0;
  for (const Unit& unit : clinic.units) {
    const Item* item = index.item(unit.item);
    if (!item || unit.issued_on >= *first) continue;
    const KindLife& life = fitted.kinds.at(item->kind);
    const auto hazard_at = [&](const Exposures& seen) {
      const Exposure exposure = seen.of(unit, item->kind);
      if (exposure.before_entry.empty()) return 0.0;
      const double age = wear_age(exposure.before_entry, life.beta);
      return std::pow(age / scale_days(life, *item), life.shape);
    };
    // Nothing had to show of a part that was brought along later.
    const double hazard = std::max(0.0, hazard_at(exposures) - hazard_at(without));
    expected += life.theta > 0 ? std::log1p(life.theta * hazard) / life.theta : hazard;
  }
  return expected > endings_that_must_show ? first : std::nullopt;
}

}  // namespace sparewell::wear
