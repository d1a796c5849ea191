#include "wear/multiplier_points.hpp"

#include <cmath>
#include <map>

#include <Eigen/Eigenvalues>

namespace sparewell::wear {
namespace {

constexpr double certain_shape = 1e8;  // a standard deviation of a hundredth of a percent

/// The points of the Gamma of that shape and rate 1.
std::vector<MultiplierPoint> laguerre_points(double shape, int points) {
  Eigen::VectorXd diagonal(points);
  Eigen::VectorXd beside(points - 1);
  for (int i = 0; i < points; ++i) diagonal[i] = 2 * i + shape;
  for (int i = 1; i < points; ++i) beside[i - 1] = std::sqrt(i * (i - 1 + shape));
  Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solved;
  solved.computeFromTridiagonal(diagonal, beside);
  std::vector<MultiplierPoint> made;
  for (int i = 0; i < points; ++i) {
    const double first = solved.eigenvectors()(0, i);
    made.push_back({solved.eigenvalues()[i], first * first});
  }
  return made;
}

/// The same, kept for each number of points: one unit asks for them at several moments in turn.
const std::vector<MultiplierPoint>& known_points(double shape, int points) {
  struct Known {
    double shape = 0;
    std::vector<MultiplierPoint> points;
  };
  thread_local std::map<int, Known> last;
  Known& known = last[points];
  if (known.points.empty() || known.shape != shape) {
    known = {shape, laguerre_points(shape, points)};
  }
  return known.points;
}

}  // namespace

std::vector<MultiplierPoint> multiplier_points(const Multiplier& multiplier, int points) {
  const double shape = multiplier.shape();
  if (!(shape < certain_shape)) return {{multiplier.mean(), 1}};
  if (points == 2) {  // asked for very often, and known in closed form
    const double apart = std::sqrt(shape + 1);
    const double share = (1 + apart) / (2 * apart);
    return {{(shape + 1 - apart) / multiplier.rate(), share},
            {(shape + 1 + apart) / multiplier.rate(), 1 - share}};
  }
  std::vector<MultiplierPoint> made = known_points(shape, points);
  for (MultiplierPoint& point : made) point.value /= multiplier.rate();
  return made;
}

}  // namespace sparewell::wear
