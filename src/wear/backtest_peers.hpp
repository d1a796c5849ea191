/// What our forecasts are measured against: two simpler ways to tell when a part is due.
#pragma once

#include <map>
#include <vector>

#include "clinic/clinic.hpp"
#include "wear/priors.hpp"
#include "wear/scores.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::wear {

/// Calendar lives (issue to end, or to the end of `today`) of the units of each kind issued by
/// today; one that ended on its first day counts as half a day.
[[nodiscard]] std::map<Kind, std::vector<Outcome>> calendar_lives(const Clinic& clinic, Date today);

/// Chances to be worn out by the end of each of the days 0 to `horizon` after the life's today.
[[nodiscard]] std::vector<double> daily_chances(const UnitLife& life, int horizon);

/// A fixed interval for each kind: a unit is due when it is as old as the median calendar life of
/// its kind (product-limit estimator), or as the median that the priors give its material when the
/// clinic's own history does not reach the median; a unit past that is due at once.
class CalendarRule {
 public:
  /// Keeps a reference to the priors, which must outlive it.
  CalendarRule(const Clinic& clinic, const PriorTable& priors, Date today);

  /// 0 before the unit is due and 1 from then on, for the days of daily_chances.
  [[nodiscard]] std::vector<double> chances(const Unit& unit, const Item& item, int horizon) const;
  /// Days from issue to due.
  [[nodiscard]] double interval_days(const Item& item) const;

 private:
  const PriorTable& priors_;
  Date today_;
  std::map<Kind, double> medians_;
};

/// One Weibull law of the calendar life for each kind by maximum likelihood, without priors,
/// factors, materials or alternation, given the unit's age. Where it cannot be fitted the priors'
/// shape and median for the unit's material stand in.
class ClinicWeibull {
 public:
  /// Keeps a reference to the priors, as CalendarRule does.
  ClinicWeibull(const Clinic& clinic, const PriorTable& priors, Date today);

  [[nodiscard]] std::vector<double> chances(const Unit& unit, const Item& item, int horizon) const;

 private:
  struct Law {
    double shape = 1;
    double scale_days = 1;
  };
  [[nodiscard]] Law law_of(const Item& item) const;

  const PriorTable& priors_;
  Date today_;
  std::map<Kind, Law> laws_;
};

}  // namespace sparewell::wear
