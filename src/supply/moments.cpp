#include "supply/moments.hpp"

#include <cmath>
#include <numbers>

namespace sparewell::supply {
namespace {

// Chances of replacement are then within 2e-6 of their own over the usual range, and within 1e-4
// over one that begins tomorrow and ends in a quarter of a year (measured, see the test).
constexpr int most = 8;

}  // namespace

Moments::Moments(int first, int last) {
  if (last - first + 1 < most) {
    for (int day = first; day <= last; ++day) at_.push_back(day);
    return;
  }
  // The extrema of the Chebyshev polynomial, both ends included.
  for (int i = 0; i < most; ++i) {
    const double angle = std::numbers::pi * i / (most - 1);
    at_.push_back(first + (last - first) * (1 - std::cos(angle)) / 2);
  }
  at_.back() = last;
}

std::vector<double> Moments::weights(double days) const {
  std::vector<double> weights(at_.size(), 0.0);
  double sum = 0;
  double binomial = 1;  // the weights of points at equal distances
  for (std::size_t i = 0; i < at_.size(); ++i) {
    if (at_[i] == days) {
      weights.assign(at_.size(), 0.0);
      weights[i] = 1;
      return weights;
    }
    const bool chebyshev = at_.size() == most;
    const double at_end = chebyshev && (i == 0 || i + 1 == at_.size()) ? 0.5 : 1;
    const double size = chebyshev ? at_end : binomial;
    weights[i] = (i % 2 == 0 ? size : -size) / (days - at_[i]);
    sum += weights[i];
    binomial *= static_cast<double>(at_.size() - 1 - i) / static_cast<double>(i + 1);
  }
  for (double& weight : weights) weight /= sum;
  return weights;
}

}  // namespace sparewell::supply
