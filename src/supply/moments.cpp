#include "supply/moments.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sparewell::supply {
namespace {

// Chances of replacement are then within 4e-6 of their own over the usual ranges, and within 1e-4
// over one that begins tomorrow and ends in a quarter of a year (measured, see the test).
constexpr int most = 8;
constexpr double wanted = 3e-4;  // of what is not smooth

/// How many moments the range needs. A chance of replacement is smooth but for the day on which the
/// part was new, which is today at the latest: the error falls by a factor with each moment, the
/// larger, the longer before the range that day was (Trefethen, Approximation Theory and
/// Approximation Practice, SIAM 2013, theorem 8.2, from memory).
int moments_for(double first, double last) {
  const double centre = (last + first) / (last - first);
  const double factor = centre + std::sqrt(centre * centre - 1);
  const double needed = factor > 1 ? 1 + std::log(1 / wanted) / std::log(factor) : most;
  return static_cast<int>(std::ceil(std::min<double>(needed, most)));
}

}  // namespace

Moments::Moments(double first, double last) {
  if (!(last > first)) {
    at_.push_back(first);
    return;
  }
  const int each_day = static_cast<int>(std::ceil(last - first)) + 1;
  const int count = std::max(2, std::min(each_day, moments_for(first, last)));
  // The extrema of the Chebyshev polynomial, both ends included.
  for (int i = 0; i < count; ++i) {
    const double angle = std::numbers::pi * i / (count - 1);
    at_.push_back(first + (last - first) * (1 - std::cos(angle)) / 2);
  }
  at_.back() = last;
}

std::vector<double> Moments::weights(double days) const {
  std::vector<double> weights(at_.size(), 0.0);
  double sum = 0;
  for (std::size_t i = 0; i < at_.size(); ++i) {
    if (at_[i] == days) {
      weights.assign(at_.size(), 0.0);
      weights[i] = 1;
      return weights;
    }
    const double size = i == 0 || i + 1 == at_.size() ? 0.5 : 1;
    weights[i] = (i % 2 == 0 ? size : -size) / (days - at_[i]);
    sum += weights[i];
  }
  for (double& weight : weights) weight /= sum;
  return weights;
}

}  // namespace sparewell::supply
