/// How many times one unit is replaced in an interval: a renewal process in wear time.
#pragma once

#include <map>
#include <utility>
#include <vector>

#include "clinic/date.hpp"
#include "supply/pmf.hpp"
#include "wear/unit_life.hpp"

namespace sparewell::supply {

/// Counts of a renewal process that starts with a fresh part, in units of the Weibull scale: lives
/// are Weibull(shape, 1). Tail chances Q_n(t) = P(N(t) >= n) are kept on a grid over [0, horizon].
///
/// Q_1(t) = F(t), and Q_n(ih) = sum over j = 1..i of (Q_{n-1}(jh) - Q_{n-1}((j-1)h)) F((i-j+1/2)h):
/// the Riemann-Stieltjes recursion of "A First Course in Stochastic Models" (2003), p. 311, which
/// there is summed over n for the renewal function, kept apart by n here. Error of a tail: under
/// 2e-5 up to a horizon of 16 for shapes from 1 up (halving the step, tests/supply/renewal_test);
/// up to 1e-4 below shape 1, where F is steep at 0.
class FreshCounts {
 public:
  /// shape > 0, horizon > 0.
  FreshCounts(double shape, double horizon);

  [[nodiscard]] double horizon() const { return horizon_; }
  /// The largest n whose tail is kept; P(N(horizon) > most()) is below 1e-13.
  [[nodiscard]] int most() const { return static_cast<int>(tails_.size()); }
  /// P(N(t) >= n), 0 <= t <= horizon, linear between grid points; 1 for n <= 0.
  [[nodiscard]] double at_least(int n, double t) const;
  /// The renewal function M(t) = E N(t).
  [[nodiscard]] double mean(double t) const;

 private:
  double horizon_;
  double step_;
  std::vector<std::vector<double>> tails_;  ///< [n - 1][grid point]
};

/// FreshCounts by shape and horizon, made when first asked for. Horizons are powers of two, so that
/// what a unit is given does not depend on what was asked before. Not for sharing between threads.
class FreshCountsCache {
 public:
  [[nodiscard]] const FreshCounts& covering(double shape, double horizon);

 private:
  std::map<std::pair<double, int>, FreshCounts> made_;
};

/// Replacements of one unit in (today, end]: it wears out by its remaining life, and is each time
/// replaced at once by a fresh one with the same shape and scale that is worn as the old one was.
/// Each chance is within 2e-5 of exact (see FreshCounts; in one to two replacements, the usual case
/// over an order interval, within 2e-6). The masses sum to 1.
[[nodiscard]] Pmf replacements(const wear::UnitLife& life, Date end, FreshCountsCache& fresh);

}  // namespace sparewell::supply
