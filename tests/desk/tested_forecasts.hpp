/// A test of forecasts with figures that are easy to follow.
#pragma once

#include "desk/forecast_test.hpp"

namespace sparewell::desk {

inline wear::BacktestScores tested_scores(int units, int events, wear::Coverage eighty) {
  wear::BacktestScores scores;
  scores.units = units;
  scores.events = events;
  scores.coverage = {wear::Coverage{0.5, 0.45, 0.55}, eighty, wear::Coverage{0.95, 0.92, 0.97}};
  scores.crps = wear::Compared{20, 50, 25};
  return scores;
}

/// Liners about right, sleeves too narrow, pumps too wide, locks too few; no other kind was in use.
inline ForecastTestPtr tested_forecasts() {
  wear::Backtest test;
  test.today = make_date(2026, 11, 25);
  test.horizon_days = 180;
  test.origins = {make_date(2023, 5, 20), make_date(2026, 5, 29)};
  test.all = tested_scores(5244, 3894, {0.77, 0.752, 0.79});
  test.kinds = {{Kind::liner, tested_scores(412, 300, {0.79, 0.75, 0.83})},
                {Kind::sleeve, tested_scores(286, 249, {0.6, 0.55, 0.65})},
                {Kind::lock, tested_scores(28, 11, {0.82, 0.67, 0.93})},
                {Kind::pump, tested_scores(1, 1, {0.92, 0.88, 0.95})}};
  test.kinds[2].scores.crps = wear::Compared{6.7, 20.4, 6.6};
  return std::make_shared<const ForecastTest>(std::move(test));
}

}  // namespace sparewell::desk
