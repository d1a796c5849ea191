/// A probability mass function on 0, 1, 2, ...: how many pieces will be needed.
#pragma once

#include <span>
#include <utility>
#include <vector>

namespace sparewell::supply {

class Pmf {
 public:
  /// Certainly zero.
  Pmf() : mass_{1.0} {}
  /// `mass[n]` is P(N = n); non-negative, summing to 1 within 1e-9, otherwise throws
  /// std::invalid_argument.
  explicit Pmf(std::vector<double> mass);

  [[nodiscard]] const std::vector<double>& mass() const& { return mass_; }
  [[nodiscard]] std::vector<double> mass() && { return std::move(mass_); }
  [[nodiscard]] double mean() const;
  /// P(N <= n); 0 for negative n.
  [[nodiscard]] double at_most(int n) const;
  /// P(N > n).
  [[nodiscard]] double more_than(int n) const;
  /// The least n with P(N <= n) >= p, 0 < p < 1.
  [[nodiscard]] int least_covering(double p) const;

 private:
  std::vector<double> mass_;
};

/// Of `trials` >= 0 independent chances, each `chance` from 0 to 1, how many come up.
[[nodiscard]] Pmf binomial(int trials, double chance);
/// `each` > 0 pieces for every one counted.
[[nodiscard]] Pmf times(int each, const Pmf& pmf);
/// The sum of two independent counts.
[[nodiscard]] Pmf convolve(const Pmf& a, const Pmf& b);
/// The sum of many independent counts; the same result in any order up to rounding.
[[nodiscard]] Pmf convolve_all(std::vector<Pmf> parts);
/// The sum of many small independent counts, each given by its tails; quicker than convolve_all,
/// because nothing is allocated for each.
class CountSum {
 public:
  /// P(N >= 1), P(N >= 2), ... of a further count. They may be off by rounding: they are made to
  /// fall and to lie between 0 and 1.
  void add(std::span<const double> tails);
  void add(Pmf count) { parts_.push_back(std::move(count)); }
  [[nodiscard]] Pmf sum() &&;

 private:
  void end_block();

  std::vector<Pmf> parts_;
  std::vector<double> block_{1.0};  ///< masses of the sum of the last counts
  int in_block_ = 0;
  std::vector<double> mass_;  ///< of the count at hand
};

/// With probability weights[i] the count follows parts[i]; weights sum to 1.
[[nodiscard]] Pmf mix(const std::vector<double>& weights, const std::vector<Pmf>& parts);

}  // namespace sparewell::supply
