/// A straight line through few points of which some may be far off.
#pragma once

#include <optional>
#include <span>

namespace sparewell::care {

/// What is known before any point is seen. The default knows nothing.
struct LinePrior {
  double slope = 0;
  /// Standard deviation of the slope, above 0; empty: nothing is known of it.
  std::optional<double> slope_sd;
  /// Of the points about the line.
  double scale = 0;
  /// What `scale` weighs, in points; 0: nothing is known of it.
  double scale_points = 0;
};

struct RobustLine {
  double intercept = 0;
  double slope = 0;
  /// The robust standard deviation that the weights go by.
  double scale = 0;
  /// Standard deviation of the points about the line, by which the errors are told.
  double sigma = 0;
  double intercept_variance = 0;
  double slope_variance = 0;
  double covariance = 0;
  /// Degrees of freedom of `sigma`, at which errors follow Student's t.
  double freedom = 0;
  /// Part of what is known of the slope that the points tell; the rest is the prior's. 0 to 1.
  double told = 1;

  [[nodiscard]] double at(double x) const { return intercept + slope * x; }
  /// Of at(x), squared.
  [[nodiscard]] double variance_at(double x) const {
    return intercept_variance + 2 * x * covariance + x * x * slope_variance;
  }
  /// Degrees of freedom of variance_at(x) and so much more, which grows by `with_sigma` when
  /// sigma^2 doubles. What the prior of the slope leaves open is a normal law, which has no end of
  /// them: by Satterthwaite's rule (Biometrics Bulletin 2 (1946) 110-114, from memory) they are
  /// freedom * (all / what goes with sigma^2)^2, and taken as no fewer than `freedom`, which they
  /// are without a prior and without more.
  [[nodiscard]] double freedom_at(double x, double more = 0, double with_sigma = 0) const;
};

/// Huber's M-estimate with k = 1.345 (Annals of Mathematical Statistics 35 (1964) 73-101; 95 %
/// efficient for the normal law), by reweighted least squares from the ordinary ones, the scale
/// being the median of the absolute residuals over 0.6745 in every round. Without a prior it is
/// `rlm` of R's package MASS with `psi.huber`, errors as `summary.rlm` tells them: sigma is
/// sqrt(sum psi^2 / (n - p)) * kappa / mean psi' with Huber's correction kappa, covariance
/// sigma^2 (X'X)^-1.
///
/// The prior of the slope is normal and enters as one more row of the least squares. That of the
/// scale is `scale_points` points with that standard deviation: scale^2 and sigma^2 are means of
/// prior and data, weighed by scale_points and n - p, where p counts the intercept and that part of
/// the slope which the points tell (1 without a prior).
///
/// Precondition: x and y are equally many. Empty where the points do not tell the line: without
/// priors fewer than three, or all at one x; with both priors none.
[[nodiscard]] std::optional<RobustLine> robust_line(std::span<const double> x,
                                                    std::span<const double> y,
                                                    const LinePrior& prior = {});

}  // namespace sparewell::care
