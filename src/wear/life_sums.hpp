/// Sums over lives that the derivatives of their likelihood are made of.
#pragma once

#include <Eigen/Core>

#include "wear/life_columns.hpp"

namespace sparewell::wear {

/// Derivatives by (log shape, log scales, beta) of the sum over lives of
///   d (h - log x) - w exp(h),   h = shape (log x - log scale),
/// with d one for a wear ending and the weight w of each life's hazard held fixed. Of the Hessian
/// only the lower triangle is filled.
struct LifeSums {
  Eigen::VectorXd gradient;
  Eigen::MatrixXd hessian;
  Eigen::MatrixXd group_gradients;  ///< of the summed hazard of each group, one a column
};

/// `weights`: one a group. `by_group`: whether the gradients of the groups are wanted.
[[nodiscard]] LifeSums life_sums(const LifeColumns& lives, const LifeAges& ages, double shape,
                                 Eigen::Index scales, const Eigen::ArrayXd& weights, bool by_group);

}  // namespace sparewell::wear
