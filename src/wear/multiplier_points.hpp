/// A personal multiplier as a few values with weights.
#pragma once

#include <vector>

#include "wear/shared_multiplier.hpp"

namespace sparewell::wear {

struct MultiplierPoint {
  double value = 1;
  double weight = 1;
};

/// Gauss quadrature for the multiplier's Gamma law: sums of weight * f(value) are exact for
/// polynomials f of degree below 2 * points, and close for any smooth f. One point when the
/// multiplier is exactly 1, or known to a hundredth of a percent. The points are the eigenvalues of
/// the recurrence of the generalised Laguerre polynomials (Golub and Welsch 1969, from memory).
[[nodiscard]] std::vector<MultiplierPoint> multiplier_points(const Multiplier& multiplier,
                                                             int points = 24);

}  // namespace sparewell::wear
