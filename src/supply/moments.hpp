/// A few moments that stand for all days of a range of time.
#pragma once

#include <vector>

namespace sparewell::supply {

/// What changes smoothly with time is computed at `at()` only and interpolated between: the
/// polynomial through the Chebyshev points of the range, in barycentric form (Berrut and Trefethen,
/// SIAM Review 46 (2004) 501-517, from memory).
class Moments {
 public:
  /// Days after today, 0 <= first <= last.
  Moments(double first, double last);

  /// Days after today, rising; the first and the last of the range among them.
  [[nodiscard]] const std::vector<double>& at() const { return at_; }
  [[nodiscard]] double first() const { return at_.front(); }
  [[nodiscard]] double last() const { return at_.back(); }
  /// Values at the moments, so weighted, sum to the value after `days`; the weights sum to 1.
  [[nodiscard]] std::vector<double> weights(double days) const;

 private:
  std::vector<double> at_;
};

}  // namespace sparewell::supply
