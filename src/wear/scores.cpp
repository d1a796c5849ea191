#include "wear/scores.hpp"

#include <algorithm>

namespace sparewell::wear {
namespace {

std::vector<Outcome> in_order_of_days(std::span<const Outcome> outcomes) {
  std::vector<Outcome> sorted{outcomes.begin(), outcomes.end()};
  std::ranges::sort(sorted, {}, &Outcome::days);
  return sorted;
}

/// Product-limit estimator of the endings of one sort; `others_first` says which of two endings on
/// one day comes first.
StepCurve product_limit(std::span<const Outcome> outcomes, bool worn_out, bool others_first) {
  const auto sorted = in_order_of_days(outcomes);
  std::vector<StepCurve::Step> steps;
  double chance = 1;
  for (std::size_t i = 0; i < sorted.size();) {
    std::size_t next = i;
    double ended = 0;
    for (; next < sorted.size() && sorted[next].days == sorted[i].days; ++next) {
      if (sorted[next].worn_out == worn_out) ++ended;
    }
    const double others = static_cast<double>(next - i) - ended;
    const double at_risk = static_cast<double>(sorted.size() - i) - (others_first ? others : 0);
    if (ended > 0) {
      chance *= 1 - ended / at_risk;
      steps.push_back({sorted[i].days, chance});
    }
    i = next;
  }
  return StepCurve{std::move(steps)};
}

double horizon_of(ChanceByDay forecast) {
  return static_cast<double>(forecast.size() - 1);
}

}  // namespace

double StepCurve::before(double days) const {
  const auto after = std::ranges::lower_bound(steps_, days, {}, &Step::days);
  return after == steps_.begin() ? 1 : std::prev(after)->chance;
}

std::optional<double> StepCurve::falls_to(double chance) const {
  const auto step = std::ranges::find_if(steps_, [&](const Step& s) { return s.chance <= chance; });
  if (step == steps_.end()) return std::nullopt;
  return step->days;
}

StepCurve survival_curve(std::span<const Outcome> outcomes) {
  return product_limit(outcomes, true, false);
}

StepCurve observation_curve(std::span<const Outcome> outcomes) {
  return product_limit(outcomes, false, true);
}

double crps_days(ChanceByDay forecast, const Outcome& outcome, const StepCurve& observed) {
  const double observed_to_end = observed.before(outcome.days);
  double sum = 0;
  for (std::size_t day = 0; day + 1 < forecast.size(); ++day) {
    const double from = static_cast<double>(day);
    if (outcome.days > from) {
      sum += forecast[day] * forecast[day] / observed.before(from + 1);
    } else if (outcome.worn_out) {
      sum += (1 - forecast[day]) * (1 - forecast[day]) / observed_to_end;
    }
  }
  return sum;
}

double quantile_within(ChanceByDay forecast, double p) {
  const auto reached = std::ranges::lower_bound(forecast, p);
  return std::min(static_cast<double>(reached - forecast.begin()), horizon_of(forecast));
}

double pinball_loss(double p, double quantile, double outcome) {
  return (p - (outcome < quantile ? 1 : 0)) * (outcome - quantile);
}

double pinball_days(double p, ChanceByDay forecast, const Outcome& outcome,
                    const StepCurve& observed) {
  const double horizon = horizon_of(forecast);
  if (!outcome.worn_out && outcome.days < horizon) return 0;
  const double known = std::min(outcome.days, horizon);
  return pinball_loss(p, quantile_within(forecast, p), known) / observed.before(known);
}

}  // namespace sparewell::wear
