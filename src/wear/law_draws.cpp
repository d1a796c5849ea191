#include "wear/law_draws.hpp"

#include <algorithm>
#include <random>

#include <Eigen/Cholesky>
#include <boost/math/distributions/normal.hpp>

namespace sparewell::wear {
namespace {

constexpr std::uint64_t seed = 20261;
constexpr Eigen::Index exact_dimensions = 24;
constexpr double two_to_64 = 18446744073709551616.0;

/// Its own transform, because standard libraries differ in theirs.
double normal_number(std::mt19937_64& random) {
  const double uniform = (static_cast<double>(random()) + 0.5) / two_to_64;
  return boost::math::quantile(boost::math::normal{}, std::min(uniform, 1 - 1e-16));
}

}  // namespace

Eigen::MatrixXd standard_draws(Eigen::Index dimensions) {
  constexpr Eigen::Index pairs = law_draws / 2;
  std::mt19937_64 random{seed};
  Eigen::MatrixXd half(dimensions, pairs);
  for (Eigen::Index j = 0; j < pairs; ++j) {
    for (Eigen::Index i = 0; i < dimensions; ++i) half(i, j) = normal_number(random);
  }
  auto leading = half.topRows(std::min(dimensions, exact_dimensions));
  const Eigen::MatrixXd covariance = leading * leading.transpose() / static_cast<double>(pairs);
  const Eigen::LLT<Eigen::MatrixXd> factored{covariance};
  leading = factored.matrixL().solve(leading).eval();
  Eigen::MatrixXd draws(dimensions, law_draws);
  draws.leftCols(pairs) = half;
  draws.rightCols(pairs) = -half;
  return draws;
}

}  // namespace sparewell::wear
