/// How good the forecasts would have been: the clinic's own history replayed.
#pragma once

#include <array>
#include <functional>
#include <optional>
#include <vector>

#include "clinic/clinic.hpp"
#include "clinic/refusal.hpp"
#include "wear/priors.hpp"
#include "wear/scores_coverage.hpp"

namespace sparewell::wear {

struct BacktestPlan {
  int origins = 6;         ///< days from which to forecast, at least 1
  int horizon_days = 180;  ///< how far a forecast is scored, at least 1
};

/// The levels of the intervals whose coverage is told.
inline constexpr std::array<double, 3> coverage_levels{0.50, 0.80, 0.95};
/// The levels of the quantiles that are scored.
inline constexpr std::array<double, 3> pinball_levels{0.10, 0.50, 0.90};

/// One score of the three forecasters on the same units, a mean in days.
struct Compared {
  double sparewell = 0;
  double calendar = 0;        ///< see CalendarRule in backtest_peers.hpp
  double clinic_weibull = 0;  ///< see ClinicWeibull there
};

/// 1 - ours / peer: the part of the peer's score that is saved; below 0 when the peer did better.
/// Empty when the peer's score is 0.
[[nodiscard]] std::optional<double> skill(double ours, double peer);

/// Scores of the forecasts of one kind, or of all. A unit counts once for each origin at which it
/// was in use.
struct BacktestScores {
  int units = 0;
  int events = 0;  ///< of these, worn out by today
  /// Of our forecasts, up to today, in the order of coverage_levels; empty when there are no units.
  /// Their intervals take the fits at the origins as given: how other clinics' fits would have
  /// turned out is not in them.
  std::array<std::optional<Coverage>, coverage_levels.size()> coverage;
  std::optional<Compared> crps;                                        ///< within the horizon
  std::array<std::optional<Compared>, pinball_levels.size()> pinball;  ///< likewise
};

struct BacktestOfKind {
  Kind kind = Kind::liner;
  BacktestScores scores;
};

struct Backtest {
  Date today;
  int horizon_days = 0;
  std::vector<Date> origins;          ///< in order
  std::vector<BacktestOfKind> kinds;  ///< those with units, in the order of the enumeration
  BacktestScores all;
};

/// Days from which to forecast: evenly from 40 % of the time between the first issue and today to
/// a horizon before today, both included; the last alone when one is wanted. Fewer when there are
/// not enough days; none when no day leaves both.
[[nodiscard]] std::vector<Date> backtest_origins(const Clinic& clinic, Date today,
                                                 const BacktestPlan& plan);

/// The clinic as it was known at the end of `origin`: as_of, without usage dated later, though it
/// may have been known ahead; the catalogue is taken as it is now.
[[nodiscard]] Clinic known_at(Clinic clinic, Date origin);

/// Asked before each origin, with how many are done, of how many; false stops the backtest.
using BacktestGoesOn = std::function<bool(int done, int of)>;

/// At each origin: fits what was known then with `priors`, forecasts every unit in use, and
/// compares with what happened until `today`. Means over units are plain; endings for other reasons
/// within the horizon are made up for kind by kind (see scores.hpp). Refuses with one sentence when
/// the history is too short, or when `goes_on` stopped it. Throws std::invalid_argument for a plan
/// with numbers below 1.
[[nodiscard]] Expected<Backtest> run_backtest(const Clinic& clinic, const PriorTable& priors,
                                              Date today, const BacktestPlan& plan,
                                              const BacktestGoesOn& goes_on = {});

}  // namespace sparewell::wear
