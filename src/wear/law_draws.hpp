/// Laws of a kind that its history leaves possible: draws from the posterior of the parameters.
#pragma once

#include <Eigen/Core>

namespace sparewell::wear {

/// How many laws stand for all that are possible.
inline constexpr Eigen::Index law_draws = 64;

/// A number for each of at most law_draws laws and the best estimate; never on the heap.
using LawArray = Eigen::Array<double, Eigen::Dynamic, 1, 0, law_draws + 1, 1>;

/// One law a row. Without rows nothing is known of the uncertainty.
struct LawDraws {
  Eigen::ArrayXd shape;
  /// Log scales in days of reference use; a column for an item never worn of each material, in the
  /// order of KindLife::scale, then one for each item of KindLife::item_scale.
  Eigen::ArrayXXd log_scale;
  Eigen::ArrayXXd beta;  ///< a column a factor
  Eigen::ArrayXd theta;

  [[nodiscard]] Eigen::Index count() const { return shape.size(); }
};

/// law_draws standard normal points in `dimensions` dimensions, one a column, always the same ones.
/// They come in opposite pairs, so that their mean is zero, and the first 24 dimensions are turned
/// and stretched until their covariance is the identity: the spread of any linear function of these
/// is then exact, only its finer shape depends on the draw.
[[nodiscard]] Eigen::MatrixXd standard_draws(Eigen::Index dimensions);

}  // namespace sparewell::wear
