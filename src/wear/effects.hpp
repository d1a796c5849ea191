/// How the usage factors change lives, from the fitted law of a kind.
#pragma once

#include <vector>

#include "wear/clinic_fit.hpp"
#include "wear/factors.hpp"
#include "wear/priors.hpp"

namespace sparewell::wear {

/// Life with `amount` more of the factor over life without: exp(-beta * amount), with the interval
/// that holds the true ratio with 80 % chance (normal on the log scale, from the covariance of the
/// fit).
struct FactorEffect {
  Factor factor = Factor::activity;
  double amount = 1;  ///< in the factor's own units, see factors.hpp
  double ratio = 1;
  double low = 1;
  double high = 1;
  double prior_ratio = 1;  ///< what was believed before the clinic's own history

  /// False when the interval holds 1: then the data do not say in which direction it works.
  [[nodiscard]] bool is_clear() const { return low > 1 || high < 1; }
};

/// The amount that a person can picture: one activity level, two hours of kneeling, four hours of
/// wear a day more; 1 for the rest.
[[nodiscard]] double telling_amount(Factor factor);

/// One a factor, in the order of the enumeration. `priors` are those that the kind was fitted with.
/// Throws std::invalid_argument for a prior that is not sane.
[[nodiscard]] std::vector<FactorEffect> factor_effects(const KindLife& life,
                                                       const PriorTable& priors);

/// Days of reference use that half of the units of the material reach. Throws std::out_of_range for
/// a material that was not fitted.
[[nodiscard]] double median_days(const KindLife& life, Material material);

}  // namespace sparewell::wear
