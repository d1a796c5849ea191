/// The personal multiplier on the hazard: Z ~ Gamma with mean 1, shared by all lives of one group.
#pragma once

#include <cstddef>
#include <vector>

namespace sparewell::wear {

/// What is believed of one group's multiplier: Gamma(shape, rate). Both infinite: it is exactly 1.
///
/// With the prior Gamma(1 / theta, 1 / theta), D endings and the summed cumulative hazard H of all
/// lives of the group, censored ones too, it is Gamma(1 / theta + D, 1 / theta + H) (the conjugate
/// posterior of a gamma frailty, a standard result).
class Multiplier {
 public:
  /// Exactly 1.
  Multiplier();
  /// Both above 0, or both infinite; throws std::invalid_argument otherwise.
  Multiplier(double shape, double rate);
  /// The posterior; theta >= 0, where 0 gives exactly 1 whatever the history.
  [[nodiscard]] static Multiplier after(double theta, double endings, double hazard);

  [[nodiscard]] double shape() const { return shape_; }
  [[nodiscard]] double rate() const { return rate_; }
  [[nodiscard]] double mean() const;
  [[nodiscard]] double variance() const;
  /// -log of the chance to survive a further cumulative hazard `further` >= 0, mixed over Z:
  /// -log E exp(-Z further) = shape log(1 + further / rate).
  [[nodiscard]] double mixed_hazard(double further) const;
  /// The `further` at which mixed_hazard is `mixed`.
  [[nodiscard]] double further_hazard(double mixed) const;

 private:
  double shape_;
  double rate_;
};

/// g = -(1 / theta + D) log(1 + theta H) with its derivatives by H and by log theta. Together with
/// the sum of log(1 + j theta) over j < D and of the log baseline hazards at the endings it is the
/// log of the marginal likelihood of one group:
///   lgamma(1/theta + D) - lgamma(1/theta) + (1/theta) log(1/theta) - (1/theta + D) log(1/theta +
///   H)
/// written so that it goes smoothly to -H as theta goes to 0.
struct MultiplierTerms {
  double value = 0;
  double mean = 1;          ///< -dg/dH, which is the posterior mean of Z
  double hazard_twice = 0;  ///< H^2 d2g/dH2; times H, so that no H is too large or small for it
  double by_log_theta = 0;
  double by_log_theta_twice = 0;
  double hazard_and_log_theta = 0;  ///< H d2g / dH dlog(theta)
};
/// endings >= 0, hazard >= 0, theta >= 0.
[[nodiscard]] MultiplierTerms multiplier_terms(double endings, double hazard, double theta);

/// Sum over groups of log(1 + j theta), j < D, for which only the number of groups with more than j
/// endings counts: exact for counts of any size, in time linear in the largest.
class EndingCounts {
 public:
  /// One more ending of a group that has `before` so far.
  void add(std::size_t before);

  struct Terms {
    double value = 0;
    double by_log_theta = 0;
    double by_log_theta_twice = 0;
  };
  [[nodiscard]] Terms terms(double theta) const;

 private:
  std::vector<double> groups_with_more_;  ///< than so many endings, by that number
};

}  // namespace sparewell::wear
