#include "wear/scores_coverage.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <vector>

namespace sparewell::wear {
namespace {

constexpr double normal_975 = 1.959963984540054;

/// Product-limit estimator of the placements up to one of them.
struct CurveStep {
  double chance = 0;       ///< the placement
  double left = 1;         ///< part of the outcomes beyond it
  double ended_share = 0;  ///< sum of d / (n (n - d)) up to it
  double own_share = 0;    ///< 1 / (n - d) there; 0 when all ended
};

std::vector<CurveStep> product_limit(std::vector<Placement> sorted) {
  std::ranges::sort(sorted, {}, &Placement::chance);
  std::vector<CurveStep> steps{CurveStep{}};
  for (std::size_t i = 0; i < sorted.size();) {
    std::size_t next = i;
    double ended = 0;
    for (; next < sorted.size() && sorted[next].chance == sorted[i].chance; ++next) {
      if (sorted[next].worn_out) ++ended;
    }
    const double at_risk = static_cast<double>(sorted.size() - i);
    CurveStep step = steps.back();
    step.chance = sorted[i].chance;
    step.left *= 1 - ended / at_risk;
    step.own_share = at_risk > ended ? 1 / (at_risk - ended) : 0;
    step.ended_share += ended * step.own_share / at_risk;
    if (ended > 0) steps.push_back(step);
    i = next;
  }
  return steps;
}

/// Part of the outcomes beyond a chance, with what it takes to differentiate it.
class Beyond {
 public:
  Beyond(const std::vector<CurveStep>& steps, double farthest, double chance)
      : steps_{steps}, chance_{chance}, part_{last_step_to(chance).left} {
    if (chance > farthest) part_ *= (1 - chance) / (1 - farthest);
  }

  [[nodiscard]] double part() const { return part_; }
  /// What one more of the outcome would change, times the number of outcomes.
  [[nodiscard]] double influence(const Placement& outcome) const {
    const CurveStep& own = last_step_to(std::min(outcome.chance, chance_));
    const bool counted = outcome.worn_out && outcome.chance <= chance_;
    return part_ * (own.ended_share - (counted ? own.own_share : 0));
  }

 private:
  [[nodiscard]] const CurveStep& last_step_to(double chance) const {
    return *std::prev(std::ranges::upper_bound(steps_, chance, {}, &CurveStep::chance));
  }

  const std::vector<CurveStep>& steps_;
  double chance_;
  double part_;
};

/// Number of independent outcomes that would give `share` the same variance.
double worth(double share, double variance, std::size_t persons) {
  const double people = static_cast<double>(persons);
  if (persons < 2 || !(variance > 0)) return people;
  const double corrected = variance * people / (people - 1);
  return std::max(1.0, share * (1 - share) / corrected);
}

/// End of Wilson's interval; `side` is -1 for the lower, 1 for the upper.
double wilson(double share, double n, double side) {
  const double z2 = normal_975 * normal_975;
  const double middle = share + z2 / (2 * n);
  const double half = normal_975 * std::sqrt(share * (1 - share) / n + z2 / (4 * n * n));
  return std::clamp((middle + side * half) / (1 + z2 / n), 0.0, 1.0);
}

}  // namespace

std::optional<Coverage> central_coverage(std::span<const Placement> placements, double level) {
  if (placements.empty()) return std::nullopt;
  const auto steps = product_limit({placements.begin(), placements.end()});
  const double farthest = std::ranges::max(placements, {}, &Placement::chance).chance;
  const double lower = (1 - level) / 2;
  const double upper = (1 + level) / 2;
  const Beyond from{steps, farthest, lower};
  const Beyond to{steps, farthest, upper};

  std::map<std::size_t, double> by_person;
  for (const Placement& outcome : placements) {
    by_person[outcome.person] += from.influence(outcome) - to.influence(outcome);
  }
  double variance = 0;
  for (const auto& [person, influence] : by_person) variance += influence * influence;

  const double share = std::clamp(from.part() - to.part(), 0.0, 1.0);
  const double n = worth(share, variance, by_person.size());
  double least = share;
  double most = share;
  if (farthest < upper) {
    const double unknown = steps.back().left;
    const double assumed = unknown * (upper - std::max(lower, farthest)) / (1 - farthest);
    least = std::max(0.0, share - assumed);
    most = std::min(1.0, least + unknown);
  }
  return Coverage{share, wilson(least, n, -1), wilson(most, n, 1)};
}

}  // namespace sparewell::wear
