/// Sums over lives that the derivatives of their likelihood are made of.
#pragma once

#include <vector>

#include <Eigen/Core>

#include "wear/life_columns.hpp"

namespace sparewell::wear {

/// One entry a group of lives that share a multiplier.
struct GroupState {
  Eigen::ArrayXd weights;  ///< of the hazards of its lives
  Eigen::ArrayXd hazards;  ///< their sum; only looked at when gradients of the groups are wanted
};

/// A gradient of which few entries are not zero: a person has worn few of all items, and with
/// hundreds of items and thousands of people the others would take most of the room and time.
struct SparseGradient {
  struct Entry {
    Eigen::Index parameter = 0;
    double value = 0;
  };
  std::vector<Entry> entries;  ///< each parameter at most once
};

/// Gradient and Hessian by (log shape, log scales, beta) of the sum over lives of
///   d (log shape + h - log x) - w exp(h),   h = shape (log x - log scale),
/// with d one for a wear ending and the weight w of each life's hazard held fixed.
class LifeSums {
 public:
  /// `groups`: of how many groups the gradients are wanted.
  LifeSums(const LifeColumns& columns, double shape, Eigen::Index scales, Eigen::Index groups);

  void add(const LifeBlock& block, const LifeAges& ages, const GroupState& groups);

  [[nodiscard]] const Eigen::VectorXd& gradient() const { return gradient_; }
  /// Only the lower triangle is filled.
  [[nodiscard]] const Eigen::MatrixXd& hessian() const { return hessian_; }
  /// Gradient of the log of the summed hazard of each group.
  [[nodiscard]] const std::vector<SparseGradient>& group_gradients() const {
    return group_gradients_;
  }

 private:
  void find_means(const LifeBlock& block, const Eigen::ArrayXd& part);
  void add_to_scales(const LifeBlock& block, const Eigen::ArrayXd& excess,
                     const Eigen::ArrayXd& with_shape, const Eigen::ArrayXd& with_scale);
  void add_squares(const Eigen::ArrayXd& weight, const Eigen::ArrayXXd& z);
  void add_span_squares(const LifeBlock& block, const Eigen::ArrayXd& part,
                        const Eigen::ArrayXd& by_age);
  void add_to_groups(const LifeBlock& block, const LifeAges& ages, const Eigen::ArrayXd& hazards);

  const LifeColumns& columns_;
  double shape_;
  Eigen::Index first_factor_;
  Eigen::VectorXd gradient_;
  Eigen::MatrixXd hessian_;
  std::vector<SparseGradient> group_gradients_;  ///< log shape and beta first, then scales
  Eigen::ArrayXXd
      means_;  ///< of the block at hand: gradient by beta of the log wear age, a life a row
};

}  // namespace sparewell::wear
