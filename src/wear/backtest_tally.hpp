/// Adds up the scores of a backtest.
#pragma once

#include <array>
#include <vector>

#include "wear/backtest.hpp"
#include "wear/scores.hpp"

namespace sparewell::wear {

/// Scores of the three forecasts of one unit, in days.
struct UnitScores {
  Compared crps;
  std::array<Compared, pinball_levels.size()> pinball;
};

/// All forecasts cover the same days. `observed`: see crps_days.
[[nodiscard]] UnitScores score_forecasts(ChanceByDay sparewell, ChanceByDay calendar,
                                         ChanceByDay clinic_weibull, const Outcome& outcome,
                                         const StepCurve& observed);

struct ScoredUnit {
  Outcome outcome;
  Placement placement;
  UnitScores scores;
};

class BacktestTally {
 public:
  void add(const ScoredUnit& unit);
  [[nodiscard]] BacktestScores scores() const;

 private:
  int events_ = 0;
  std::vector<Placement> placements_;
  UnitScores sums_;
};

}  // namespace sparewell::wear
