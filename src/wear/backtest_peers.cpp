#include "wear/backtest_peers.hpp"

#include <algorithm>
#include <cmath>

#include "wear/kind_prior.hpp"
#include "wear/weibull_regression.hpp"

namespace sparewell::wear {
namespace {

constexpr double half_a_day = 0.5;

struct PriorLaw {
  double shape = 1;
  double median_days = 1;
};

PriorLaw prior_law(const PriorTable& priors, const Item& item) {
  const KindPrior prior = kind_prior(priors, item.kind, {item.material});
  const auto at = std::ranges::find(prior.materials, item.material) - prior.materials.begin();
  return {std::exp(prior.log_shape.mean),
          std::exp(prior.log_median[static_cast<std::size_t>(at)].mean)};
}

LifeTable table_of(const std::vector<Outcome>& lives) {
  LifeTable table;
  const auto rows = static_cast<Eigen::Index>(lives.size());
  table.time.resize(rows);
  table.covariates.resize(rows, 0);
  for (const Outcome& life : lives) {
    table.time[static_cast<Eigen::Index>(table.event.size())] = life.days;
    table.event.push_back(life.worn_out);
  }
  return table;
}

}  // namespace

std::map<Kind, std::vector<Outcome>> calendar_lives(const Clinic& clinic, Date today) {
  const ClinicIndex index{clinic};
  std::map<Kind, std::vector<Outcome>> lives;
  for (const Unit& unit : clinic.units) {
    const Item* item = index.item(unit.item);
    if (item == nullptr || unit.issued_on > today) continue;
    const bool ended = unit.ended_on && *unit.ended_on <= today;
    const double age = days_between(unit.issued_on, ended ? *unit.ended_on : today);
    if (!ended && !(age > 0)) continue;  // issued today: says nothing
    lives[item->kind].push_back(
        {std::max(age, half_a_day), ended && unit.end_reason && is_wear(*unit.end_reason)});
  }
  return lives;
}

std::vector<double> daily_chances(const UnitLife& life, int horizon) {
  std::vector<double> chances;
  chances.reserve(static_cast<std::size_t>(horizon) + 1);
  for (int day = 0; day <= horizon; ++day) {
    chances.push_back(life.chance_worn_by(life.today() + days{day}));
  }
  return chances;
}

CalendarRule::CalendarRule(const Clinic& clinic, const PriorTable& priors, Date today)
    : priors_{priors}, today_{today} {
  for (const auto& [kind, lives] : calendar_lives(clinic, today)) {
    if (const auto median = survival_curve(lives).falls_to(0.5)) medians_[kind] = *median;
  }
}

double CalendarRule::interval_days(const Item& item) const {
  const auto own = medians_.find(item.kind);
  return own != medians_.end() ? own->second : prior_law(priors_, item).median_days;
}

std::vector<double> CalendarRule::chances(const Unit& unit, const Item& item, int horizon) const {
  const double due = interval_days(item) - days_between(unit.issued_on, today_);
  std::vector<double> chances(static_cast<std::size_t>(horizon) + 1, 0);
  // Nothing can be worn out by the end of today that is known to be in use then.
  for (int day = 1; day <= horizon; ++day) chances[static_cast<std::size_t>(day)] = day >= due;
  return chances;
}

ClinicWeibull::ClinicWeibull(const Clinic& clinic, const PriorTable& priors, Date today)
    : priors_{priors}, today_{today} {
  for (const auto& [kind, lives] : calendar_lives(clinic, today)) {
    if (const auto fit = fit_weibull_life(table_of(lives))) laws_[kind] = {fit->shape, fit->scale};
  }
}

ClinicWeibull::Law ClinicWeibull::law_of(const Item& item) const {
  const auto own = laws_.find(item.kind);
  if (own != laws_.end()) return own->second;
  const auto [shape, median] = prior_law(priors_, item);
  return {shape, median / std::pow(std::log(2.0), 1 / shape)};
}

std::vector<double> ClinicWeibull::chances(const Unit& unit, const Item& item, int horizon) const {
  const auto [shape, scale] = law_of(item);
  const double age = days_between(unit.issued_on, today_);
  return daily_chances(UnitLife{today_, age, shape, scale, {{today_, 1.0}}}, horizon);
}

}  // namespace sparewell::wear
