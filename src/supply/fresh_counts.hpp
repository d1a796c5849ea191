/// How many times a part that is new at the start is replaced in an interval.
#pragma once

#include <cstddef>
#include <map>
#include <mutex>
#include <optional>
#include <tuple>
#include <vector>

namespace sparewell::supply {

/// Counts of a renewal process that starts with a fresh part, in units of the Weibull scale: lives
/// are the shorter of Weibull(shape, 1) and an exponential life of rate `loss_rate`, so that
/// F(t) = 1 - exp(-t^shape - loss_rate t). Tail chances Q_n(t) = P(N(t) >= n) are kept on a grid
/// over [0, horizon].
///
/// Q_1(t) = F(t), and Q_n(ih) = sum over j = 1..i of (Q_{n-1}(jh) - Q_{n-1}((j-1)h)) F((i-j+1/2)h):
/// the Riemann-Stieltjes recursion of "A First Course in Stochastic Models" (2003), p. 311, which
/// there is summed over n for the renewal function, kept apart by n here. Error of a tail: under
/// 2e-5 for shapes from 1 to 4, under 1e-4 for shapes down to 0.7, where F is steep at 0.
class FreshCounts {
 public:
  /// shape > 0, horizon > 0, loss_rate >= 0.
  FreshCounts(double shape, double horizon, double loss_rate = 0);

  /// The largest n whose tail is kept; P(N(horizon) > most()) is below 1e-13.
  [[nodiscard]] int most() const { return static_cast<int>(most_); }
  /// P(N(t) >= n), 0 <= t <= horizon, linear between grid points; 1 for n <= 0.
  [[nodiscard]] double at_least(int n, double t) const;
  /// The renewal function M(t) = E N(t).
  [[nodiscard]] double mean(double t) const;

 private:
  friend class FreshTails;
  struct Cell {
    std::size_t left = 0;  ///< the grid point on its left
    double share = 0;      ///< of the cell that lies left of t
  };
  [[nodiscard]] Cell cell_at(double t) const;
  /// The tail of column + 1.
  [[nodiscard]] double between(const Cell& cell, std::size_t column) const;

  double per_step_;  ///< grid steps in one unit of time
  std::size_t most_ = 0;
  std::vector<double> tails_;  ///< by grid point, then n - 1: one look-up finds all n
};

/// Tails of FreshCounts for any loss rate, by a parabola through three rates for which they are
/// made (error below 1e-5). Refers to a FreshCountsCache.
class FreshTails {
 public:
  struct Part {
    const FreshCounts* counts = nullptr;
    double weight = 0;
  };
  /// One part, or three with the same horizon.
  explicit FreshTails(std::vector<Part> parts);

  /// The largest n whose tail is kept for any of the rates.
  [[nodiscard]] int most() const { return static_cast<int>(most_); }
  /// Adds weight * P(N(t) >= n) to sums[n - 1] for every n up to most(); chances below 1e-9 are
  /// left out.
  void add_tails(double t, double weight, std::vector<double>& sums) const;

 private:
  std::vector<Part> parts_;
  std::size_t most_ = 0;
};

/// FreshCounts by shape, horizon and loss rate, made when first asked for. Horizons are powers of
/// two and losses expected within them multiples of 0.05, so that what a unit is given does not
/// depend on what was asked before. Threads may share it.
class FreshCountsCache {
 public:
  [[nodiscard]] FreshTails covering(double shape, double horizon, double loss_rate = 0);

 private:
  struct Entry {
    std::once_flag made;
    std::optional<FreshCounts> counts;
  };
  [[nodiscard]] const FreshCounts& made(double shape, int power, int losses);

  std::mutex guard_;  // not held while counts are made, so that threads make theirs side by side
  std::map<std::tuple<double, int, int>, Entry> made_;  // entries never move
};

}  // namespace sparewell::supply
