/// Scores of forecasts of remaining lives against what happened: smaller is better, in days.
///
/// All work on whole days after the day of the forecast up to a horizon, which makes them proper
/// for lives that have not ended: threshold-weighted CRPS and quantile scores of outcomes cut off
/// at a known horizon reward the honest forecast (Taggart, Loveday, Louis, "On the evaluation of
/// time-to-event, survival time and first passage time forecasts", arXiv:2603.14835, abstract read;
/// the threshold weight is that of Gneiting and Ranjan 2011, from memory). Lives cut short before
/// the horizon for other reasons than wear are made up for by weighting the others with the inverse
/// of their chance to have stayed under observation (Graf et al., Statistics in Medicine 1999, from
/// memory).
#pragma once

#include <optional>
#include <span>
#include <vector>

namespace sparewell::wear {

/// What became of one life, counted from the day of the forecast.
struct Outcome {
  double days = 0;        ///< at least 0
  bool worn_out = false;  ///< otherwise still going, or ended for another reason, after `days`
};

/// A chance that falls in steps with time, 1 at first.
class StepCurve {
 public:
  struct Step {
    double days = 0;
    double chance = 1;  ///< from `days` on
  };

  StepCurve() = default;
  /// In order of days, chances falling.
  explicit StepCurve(std::vector<Step> steps) : steps_{std::move(steps)} {}

  /// Chance to go on for `days` at least: the curve just before `days`.
  [[nodiscard]] double before(double days) const;
  /// First days by which the curve is at `chance` or below; empty when it never is.
  [[nodiscard]] std::optional<double> falls_to(double chance) const;

 private:
  std::vector<Step> steps_;
};

/// Chance not to be worn out after so many days, by the product-limit estimator (Kaplan and Meier
/// 1958, from memory). A life that ends on the day of a wear ending was still at risk of it.
[[nodiscard]] StepCurve survival_curve(std::span<const Outcome> outcomes);

/// Chance to be still under observation, by the same estimator with the parts exchanged. A wear
/// ending comes before other endings of the same day.
[[nodiscard]] StepCurve observation_curve(std::span<const Outcome> outcomes);

/// Chance to be worn out by the end of day 0, 1, ... horizon after the forecast: never falling, two
/// entries at least.
using ChanceByDay = std::span<const double>;

/// Integral over t from 0 to the horizon of w(t) (F(t) - 1{T <= t})^2 dt, F constant over each day.
/// Without other endings before the horizon w is 1, and this is the threshold-weighted CRPS.
/// Otherwise w(t) is 1 / P(observed to T) once worn out, 1 / P(observed to t) before, 0 once out of
/// sight: the integrated Brier score of Graf et al. Exact for outcomes of whole days.
[[nodiscard]] double crps_days(ChanceByDay forecast, const Outcome& outcome,
                               const StepCurve& observed);

/// First day by which the chance reaches `p`; the horizon when it does not.
[[nodiscard]] double quantile_within(ChanceByDay forecast, double p);

/// (p - 1{y < q}) (y - q): the pinball loss of the quantile q forecast at level p (Koenker and
/// Bassett 1978, from memory).
[[nodiscard]] double pinball_loss(double p, double quantile, double outcome);

/// Pinball loss of the quantile and outcome both cut off at the horizon, weighted with
/// 1 / P(observed to then); 0 for a life that went out of sight before.
[[nodiscard]] double pinball_days(double p, ChanceByDay forecast, const Outcome& outcome,
                                  const StepCurve& observed);

}  // namespace sparewell::wear
