/// Prior and likelihood of one kind together.
#pragma once

#include <vector>

#include "wear/kind_prior.hpp"
#include "wear/life_likelihood.hpp"
#include "wear/newton.hpp"

namespace sparewell::wear {

/// Where each parameter of a kind stands: log shape, log scale of each item, beta, log variance of
/// the personal multiplier, log scale of each material.
struct KindLayout {
  Eigen::Index items = 0;
  Eigen::Index materials = 0;

  [[nodiscard]] Eigen::Index item(Eigen::Index number) const { return 1 + number; }
  [[nodiscard]] Eigen::Index beta() const { return 1 + items; }
  [[nodiscard]] Eigen::Index log_theta() const { return beta() + factors; }
  [[nodiscard]] Eigen::Index material(Eigen::Index number) const {
    return log_theta() + 1 + number;
  }
  [[nodiscard]] Eigen::Index parameters() const { return material(materials); }

 private:
  static constexpr auto factors = static_cast<Eigen::Index>(factor_count);
};

/// Log posterior density of the parameters of a KindLayout, but for a constant. The items that were
/// worn have scales of their own, normal in the log around that of their material with the standard
/// deviation `item_spread`. The belief about the median is about
/// log median = log scale of the material + log(log 2) / shape and moves with the shape exactly.
class KindPosterior final : public Objective {
 public:
  /// Keeps references to prior, likelihood and materials, which must outlive it. The likelihood has
  /// one scale an item and a shared multiplier; `material_of` says for each item which material of
  /// the prior it is made of.
  KindPosterior(const KindPrior& prior, const LifeLikelihood& likelihood,
                const std::vector<Eigen::Index>& material_of, double item_spread);

  [[nodiscard]] double value(const Eigen::VectorXd& at) const override;
  [[nodiscard]] Derivatives derivatives(const Eigen::VectorXd& at) const override;
  /// Those of the prior alone.
  [[nodiscard]] Derivatives prior_derivatives(const Eigen::VectorXd& at) const;

  [[nodiscard]] const KindLayout& layout() const { return layout_; }
  /// The maximum of the prior alone.
  [[nodiscard]] Eigen::VectorXd prior_mode() const;
  /// A place from where the search converges, see LifeLikelihood::start_near.
  [[nodiscard]] Eigen::VectorXd start() const;
  /// The least curvature that the prior gives to any parameter.
  [[nodiscard]] double least_prior_precision() const;
  /// Log of the marginal likelihood of `item_spread` times its prior, but for a constant, by
  /// Laplace's approximation around the maximum of this posterior.
  [[nodiscard]] double evidence(const Maximum& maximum) const;

 private:
  [[nodiscard]] Belief item_belief(Eigen::Index item, const Eigen::VectorXd& at) const;

  const KindPrior& prior_;
  const LifeLikelihood& likelihood_;
  const std::vector<Eigen::Index>& material_of_;
  double item_spread_;
  KindLayout layout_;
};

}  // namespace sparewell::wear
