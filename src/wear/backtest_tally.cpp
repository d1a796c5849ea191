#include "wear/backtest_tally.hpp"

namespace sparewell::wear {
namespace {

void add_to(Compared& sum, const Compared& more) {
  sum.sparewell += more.sparewell;
  sum.calendar += more.calendar;
  sum.clinic_weibull += more.clinic_weibull;
}

Compared mean_of(const Compared& sum, std::size_t count) {
  const double n = static_cast<double>(count);
  return {sum.sparewell / n, sum.calendar / n, sum.clinic_weibull / n};
}

}  // namespace

UnitScores score_forecasts(ChanceByDay sparewell, ChanceByDay calendar, ChanceByDay clinic_weibull,
                           const Outcome& outcome, const StepCurve& observed) {
  UnitScores scores;
  scores.crps = {crps_days(sparewell, outcome, observed), crps_days(calendar, outcome, observed),
                 crps_days(clinic_weibull, outcome, observed)};
  for (std::size_t i = 0; i < pinball_levels.size(); ++i) {
    const double p = pinball_levels[i];
    scores.pinball[i] = {pinball_days(p, sparewell, outcome, observed),
                         pinball_days(p, calendar, outcome, observed),
                         pinball_days(p, clinic_weibull, outcome, observed)};
  }
  return scores;
}

void BacktestTally::add(const ScoredUnit& unit) {
  if (unit.outcome.worn_out) ++events_;
  placements_.push_back(unit.placement);
  add_to(sums_.crps, unit.scores.crps);
  for (std::size_t i = 0; i < pinball_levels.size(); ++i) {
    add_to(sums_.pinball[i], unit.scores.pinball[i]);
  }
}

BacktestScores BacktestTally::scores() const {
  BacktestScores made;
  if (placements_.empty()) return made;
  made.units = static_cast<int>(placements_.size());
  made.events = events_;
  for (std::size_t i = 0; i < coverage_levels.size(); ++i) {
    made.coverage[i] = central_coverage(placements_, coverage_levels[i]);
  }
  made.crps = mean_of(sums_.crps, placements_.size());
  for (std::size_t i = 0; i < pinball_levels.size(); ++i) {
    made.pinball[i] = mean_of(sums_.pinball[i], placements_.size());
  }
  return made;
}

}  // namespace sparewell::wear
