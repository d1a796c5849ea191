#include "care/resupply.hpp"

#include <algorithm>
#include <cmath>

#include "supply/unit_path.hpp"
#include "wear/multiplier_points.hpp"

namespace sparewell::care {
namespace {

using Days = std::vector<double>;  ///< by day of the trip, from 0, the departure

/// A unit and those that follow it, day by day, for one value of the person's multiplier.
class Line {
 public:
  Line(const Trip& trip, const wear::LifeOfUnit& of, double multiplier, int most)
      : days_{static_cast<std::size_t>(days_between(trip.departure, trip.last_day))} {
    const wear::UnitLife& life = of.life;
    const double before = days_between(life.today(), trip.departure);
    const double worn = life.wear_in(before);
    const auto all = static_cast<double>(days_);
    const double rate = (life.wear_in(before + all) - worn) / all;
    const double losses = supply::losses_per_day(of.others);
    Days first(days_ + 1);
    Days lasts(days_ + 1);
    for (std::size_t day = 0; day <= days_; ++day) {
      const auto at = static_cast<double>(day);
      const double hazard =
          life.baseline_hazard(life.wear_in(before + at)) - life.baseline_hazard(worn);
      first[day] = std::exp(-multiplier * hazard - losses * at);
      lasts[day] = std::exp(-multiplier * std::pow(rate * at / life.scale_days(), life.shape()) -
                            losses * at);
    }
    first_ = falls(first);
    fresh_ = falls(lasts);
    density_ = first_;
    for (std::size_t day = 1; day <= days_; ++day) {
      for (std::size_t last = 1; last < day; ++last) {
        density_[day] += density_[last] * fresh_[day - last];
      }
    }
    tails_.assign(static_cast<std::size_t>(most) + 1, Days(days_ + 1, 0.0));
    std::ranges::fill(tails_[0], 1.0);
    for (std::size_t n = 1; n < tails_.size(); ++n) {
      for (std::size_t within = 1; within <= days_; ++within) {
        for (std::size_t day = 1; day <= within; ++day) {
          tails_[n][within] += fresh_[day] * tails_[n - 1][within - day];
        }
      }
    }
  }

  [[nodiscard]] double density(std::size_t day) const { return density_[day]; }

  /// P(at least 0, 1 ... failures) of a new unit in so many days.
  [[nodiscard]] Days fresh_tails(std::size_t within) const {
    Days made;
    for (const Days& tail : tails_) made.push_back(tail[within]);
    return made;
  }

  /// The same from the beginning of `day` on, whatever happened before.
  [[nodiscard]] Days tails_from(std::size_t day, std::size_t within) const {
    Days made(tails_.size(), 0.0);
    made[0] = 1;
    for (std::size_t later = 0; later <= within && day + later <= days_; ++later) {
      double next = first_[day + later];
      for (std::size_t last = 1; last < day; ++last) {
        next += density_[last] * fresh_[day + later - last];
      }
      for (std::size_t n = 1; n < made.size(); ++n) made[n] += next * tails_[n - 1][within - later];
    }
    return made;
  }

 private:
  static Days falls(const Days& lasting) {
    Days made(lasting.size(), 0.0);
    for (std::size_t day = 1; day < lasting.size(); ++day)
      made[day] = lasting[day - 1] - lasting[day];
    return made;
  }

  std::size_t days_;
  Days first_;    ///< chance that the unit in use fails on that day
  Days fresh_;    ///< that a new one fails after so many days
  Days density_;  ///< that any unit of the line fails on that day
  std::vector<Days> tails_;
};

/// P(at least 0, 1 ... of both).
Days together(const Days& a, const Days& b) {
  Days made(a.size(), 0.0);
  made[0] = 1;
  for (std::size_t n = 1; n < a.size(); ++n) {
    made[n] = a[n];
    for (std::size_t of_a = 0; of_a < n; ++of_a) made[n] += (a[of_a] - a[of_a + 1]) * b[n - of_a];
  }
  return made;
}

/// Expected beginnings of days on which more than n units are missing, for n = 0, 1 ...
Days expected_gaps(const std::vector<Line>& lines, std::size_t days, std::size_t window, int most) {
  Days made(static_cast<std::size_t>(most) + 1, 0.0);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    for (std::size_t day = 1; day <= days; ++day) {
      const std::size_t within = std::min(window - 1, days - day);
      Days further = lines[i].fresh_tails(within);
      for (std::size_t j = 0; j < lines.size(); ++j) {
        if (j != i) further = together(further, lines[j].tails_from(day, within));
      }
      for (std::size_t n = 0; n < made.size(); ++n) made[n] += lines[i].density(day) * further[n];
    }
  }
  return made;
}

/// How much likelier failures are with the law averaged over all that are possible, at least 1.
double averaging(const Trip& trip, const wear::LifeOfUnit& of) {
  const double before = days_between(of.life.today(), trip.departure);
  const double away = days_between(trip.departure, trip.last_day);
  const double best = of.life.having_lasted_until(trip.departure).chance_after(away);
  const double lasts = 1 - of.life.chance_after(before);
  if (!(best > 0) || !(lasts > 0)) return 1;
  return std::max(1.0, (1 - (1 - of.life.chance_after(before + away)) / lasts) / best);
}

}  // namespace

std::vector<double> lasting_with_resupply(const Trip& trip, std::span<const wear::LifeOfUnit> units,
                                          int resupply_days, int most) {
  std::vector<double> lasting(static_cast<std::size_t>(most) + 1, 1.0);
  const int days = days_between(trip.departure, trip.last_day);
  if (units.empty() || days <= 0) return lasting;
  double raised = 1;
  for (const auto& unit : units) raised = std::max(raised, averaging(trip, unit));
  // The units of one function are of one person; what is known of them may differ between kinds.
  const auto persons =
      wear::multiplier_points(units.front().life.having_lasted_until(trip.departure).person(), 12);
  for (const auto& person : persons) {
    std::vector<Line> lines;
    for (const auto& unit : units) lines.emplace_back(trip, unit, person.value, most);
    const auto gaps = expected_gaps(lines, static_cast<std::size_t>(days),
                                    static_cast<std::size_t>(resupply_days), most);
    for (std::size_t n = 0; n < lasting.size(); ++n) {
      lasting[n] -= person.weight * std::min(1.0, raised * gaps[n]);
    }
  }
  for (double& chance : lasting) chance = std::max(0.0, chance);
  return lasting;
}

}  // namespace sparewell::care
