/// The prior of one kind in the shape the estimation needs.
#pragma once

#include <vector>

#include "wear/factors.hpp"
#include "wear/priors.hpp"

namespace sparewell::wear {

/// Normal belief about one number.
struct Belief {
  double mean = 0;
  double spread = 1;
};

struct KindPrior {
  Kind kind = Kind::liner;
  Belief log_shape;
  std::vector<Material> materials;  ///< in the order of the enumeration
  std::vector<Belief> log_median;   ///< of the life in days of reference use, one a material
  std::array<Belief, factor_count> beta;
  Belief log_theta;        ///< of the variance of the personal multiplier
  Belief log_item_spread;  ///< of the standard deviation of log scales among items of a material
};

/// Materials are those with a row of their own and those in `used`; when there is none, `other`.
/// The shape is that of the kind's row without material, or of its first row. A kind or a factor
/// without any row gets a vague belief: median one year within a factor of about 5, shape 1.5, no
/// effect of the factor, a personal multiplier of variance 0.2 within a factor of about 4, items 10
/// % apart within a factor of about 3. Throws std::invalid_argument for a row of the kind that is
/// not sane (see prior_check.hpp).
[[nodiscard]] KindPrior kind_prior(const PriorTable& priors, Kind kind,
                                   const std::vector<Material>& used);

}  // namespace sparewell::wear
