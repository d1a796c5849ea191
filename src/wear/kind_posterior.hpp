/// Prior and likelihood of one kind together.
#pragma once

#include "wear/kind_prior.hpp"
#include "wear/life_likelihood.hpp"
#include "wear/newton.hpp"

namespace sparewell::wear {

/// Log posterior density of theta = (log shape, log scale of each material of the prior, beta, log
/// variance of the personal multiplier), but for a constant. The belief about the median is about
/// log median = log scale + log(log 2) / shape and moves with the shape exactly.
class KindPosterior final : public Objective {
 public:
  /// Keeps references to both, which must outlive it. The likelihood has one scale parameter a
  /// material of the prior and a shared multiplier.
  KindPosterior(const KindPrior& prior, const LifeLikelihood& likelihood)
      : prior_{prior}, likelihood_{likelihood} {}

  [[nodiscard]] double value(const Eigen::VectorXd& theta) const override;
  [[nodiscard]] Derivatives derivatives(const Eigen::VectorXd& theta) const override;

  /// The maximum of the prior alone.
  [[nodiscard]] Eigen::VectorXd prior_mode() const;
  /// The least curvature that the prior gives to any parameter.
  [[nodiscard]] double least_prior_precision() const;

 private:
  const KindPrior& prior_;
  const LifeLikelihood& likelihood_;
};

}  // namespace sparewell::wear
