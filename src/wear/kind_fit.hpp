/// Fits the law of one kind to its lives.
#pragma once

#include <vector>

#include "wear/kind_life.hpp"
#include "wear/kind_prior.hpp"
#include "wear/life_likelihood.hpp"

namespace sparewell::wear {

/// What one kind is estimated from.
struct KindData {
  KindPrior prior;
  std::vector<ItemCode> items;  ///< that were worn, sorted; one scale of the likelihood each
  std::vector<Eigen::Index>
      material_of;  ///< of each item, its position in the materials of the prior
  LifeLikelihood likelihood;
};

/// The maximum of the posterior, with its curvature and draws. The spread among items is the one
/// with the largest marginal likelihood times prior (empirical Bayes by Laplace's approximation,
/// over a grid of spreads); with fewer than two items it is the prior's.
[[nodiscard]] KindLife fit_kind(const KindData& data);

}  // namespace sparewell::wear
