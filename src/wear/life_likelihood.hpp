/// The likelihood of lives under the wear model: the one kernel of the clinic fit and of the plain
/// Weibull regression.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include <Eigen/Core>

#include "wear/newton.hpp"

namespace sparewell::wear {

/// One life as the likelihood sees it.
struct ObservedLife {
  std::size_t scale = 0;            ///< which scale parameter it has
  bool worn_out = false;            ///< otherwise right-censored
  std::span<const double> days;     ///< worn under each set of factors; above 0, at least one
  std::span<const double> factors;  ///< z of each, one after another
  std::span<const double> at_end;   ///< z when it ended
};

/// Log-likelihood of theta = (log shape k, log scales lambda, beta). With the wear age
/// x = sum of days * exp(beta . z) a life adds
///   log k - log lambda + (k - 1) log(x / lambda) + beta . z(end) - (x / lambda)^k  if it wore out
///   -(x / lambda)^k                                                            if it is censored
/// which is the Weibull density of x times dx/dt at the end, but for the constant log share. With
/// one span a life it is an ordinary Weibull accelerated-failure-time model with coefficients
/// -beta.
///
/// Room for more: left truncation adds +(x_entry / lambda)^k with a second list of spans a life; an
/// item effect is one more scale parameter an item with a prior that ties it to its material's; the
/// personal multiplier replaces a person's -sum H + D log by their Gamma mixture.
class LifeLikelihood final : public Objective {
 public:
  LifeLikelihood(std::size_t scale_count, std::size_t factor_count);

  void add(const ObservedLife& life);

  [[nodiscard]] std::size_t lives() const { return lives_.size(); }
  [[nodiscard]] std::size_t wear_endings() const { return wear_endings_; }
  [[nodiscard]] Eigen::Index parameters() const { return 1 + scales_ + factors_; }

  [[nodiscard]] double value(const Eigen::VectorXd& theta) const override;
  [[nodiscard]] Derivatives derivatives(const Eigen::VectorXd& theta) const override;

  /// Scale parameters (as logs) that would be best for the shape and beta of `theta` alone, each
  /// with one more wear ending at its scale in `theta`: a place from where the search converges.
  [[nodiscard]] Eigen::VectorXd start_near(const Eigen::VectorXd& theta) const;

 private:
  struct Life {
    Eigen::Index first_span;
    Eigen::Index spans;
    Eigen::Index scale;
    bool worn_out;
  };
  struct Sums;

  [[nodiscard]] const double* factors_of(Eigen::Index span) const {
    return span_factors_.data() + span * factors_;
  }
  [[nodiscard]] double log_wear(Eigen::Index span, const double* beta) const;
  [[nodiscard]] double log_wear_age(const Life& life, const double* beta) const;
  void add_derivatives(const Life& life, double shape, double log_age, double h, double hazard,
                       Sums& sums) const;
  void add_spread(const Life& life, const double* beta, double log_age, double weight,
                  Sums& sums) const;
  void mean_factors(const Life& life, const double* beta, double log_age, double* mean) const;

  Eigen::Index scales_;
  Eigen::Index factors_;
  std::size_t wear_endings_ = 0;
  std::vector<Life> lives_;
  std::vector<double> span_log_days_;
  std::vector<double> span_factors_;
  Eigen::VectorXd factors_at_wear_endings_;  ///< summed over the lives
};

}  // namespace sparewell::wear
