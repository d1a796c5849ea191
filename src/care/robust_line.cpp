#include "care/robust_line.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace sparewell::care {
namespace {

constexpr double huber_k = 1.345;
/// The 3/4 quantile of the normal law, to the digits that R's rlm has.
constexpr double normal_quartile = 0.6745;
constexpr double tolerance = 1e-13;
/// From then on the scale is held, which leaves a convex problem that has an end.
constexpr int rounds_with_scale = 300;
constexpr int most_rounds = 600;

double huber_weight(double residual, double scale) {
  const double size = std::abs(residual);
  return size <= huber_k * scale ? 1 : huber_k * scale / size;
}

class Search {
 public:
  Search(std::span<const double> x, std::span<const double> y, const LinePrior& prior)
      : x_{x}, y_{y}, prior_{prior}, residuals_(x.size()), weights_(x.size(), 1.0) {
    for (const double each : x) centre_ += each / static_cast<double>(x.size());
    for (const double each : x) spread_ += (each - centre_) * (each - centre_);
  }

  /// Points less the parameters that they tell, at that standard deviation about the line.
  [[nodiscard]] double freedom(double sd) const {
    return static_cast<double>(x_.size()) - 1 - told_of_slope(sd);
  }

  void run() {
    // The prior's scale, or that of ordinary least squares, where the first round needs one.
    scale_ = prior_.scale;
    solve();
    for (int round = 0; round < most_rounds; ++round) {
      if (round < rounds_with_scale) scale_ = shrunk(median_scale());
      if (!(scale_ > 0)) return;
      for (std::size_t i = 0; i < x_.size(); ++i) weights_[i] = huber_weight(residuals_[i], scale_);
      const double before = mean_;
      const double slope_before = slope_;
      solve();
      const double moved =
          std::abs(mean_ - before) + std::abs(slope_ - slope_before) * std::sqrt(spread_);
      if (moved <= tolerance * scale_) return;
    }
  }

  [[nodiscard]] RobustLine line() const {
    RobustLine made;
    made.slope = slope_;
    made.intercept = mean_ - slope_ * centre_;
    made.scale = scale_;
    made.freedom = prior_.scale_points + freedom(scale_);
    made.sigma = std::sqrt(sigma_squared());
    const double variance = made.sigma * made.sigma;
    made.told = told_of_slope(made.sigma);
    made.slope_variance = 1 / (spread_ / variance + slope_precision());
    const double level_variance = variance / static_cast<double>(x_.size());
    made.intercept_variance = level_variance + centre_ * centre_ * made.slope_variance;
    made.covariance = -centre_ * made.slope_variance;
    return made;
  }

 private:
  [[nodiscard]] double slope_precision() const {
    return prior_.slope_sd ? 1 / (*prior_.slope_sd * *prior_.slope_sd) : 0;
  }

  [[nodiscard]] double told_of_slope(double sd) const {
    const double wanted = slope_precision() * sd * sd;
    return spread_ > 0 ? spread_ / (spread_ + wanted) : 0;
  }

  /// Mean of a squared standard deviation of the points and the prior's.
  [[nodiscard]] double with_prior(double squared, double points) const {
    const double known = prior_.scale_points;
    if (known <= 0) return squared;
    const double seen = std::max(0.0, points);
    return (known * prior_.scale * prior_.scale + seen * squared) / (known + seen);
  }

  [[nodiscard]] double shrunk(double seen) const {
    return std::sqrt(with_prior(seen * seen, freedom(scale_)));
  }

  [[nodiscard]] double median_scale() {
    sorted_.assign(residuals_.begin(), residuals_.end());
    for (double& each : sorted_) each = std::abs(each);
    const auto middle = sorted_.begin() + static_cast<std::ptrdiff_t>(sorted_.size() / 2);
    std::ranges::nth_element(sorted_, middle);
    double median = *middle;
    if (sorted_.size() % 2 == 0) {
      median = (median + *std::max_element(sorted_.begin(), middle)) / 2;
    }
    return median / normal_quartile;
  }

  /// Weighted least squares, with the prior of the slope as a row of its own.
  void solve() {
    double weight = 0;
    double x_mean = 0;
    double y_mean = 0;
    for (std::size_t i = 0; i < x_.size(); ++i) {
      weight += weights_[i];
      x_mean += weights_[i] * x_[i];
      y_mean += weights_[i] * y_[i];
    }
    x_mean /= weight;
    y_mean /= weight;
    double xx = 0;
    double xy = 0;
    for (std::size_t i = 0; i < x_.size(); ++i) {
      xx += weights_[i] * (x_[i] - x_mean) * (x_[i] - x_mean);
      xy += weights_[i] * (x_[i] - x_mean) * (y_[i] - y_mean);
    }
    const double known = slope_precision() * scale_ * scale_;
    slope_ = xx + known > 0 ? (xy + known * prior_.slope) / (xx + known) : prior_.slope;
    mean_ = y_mean + slope_ * (centre_ - x_mean);
    for (std::size_t i = 0; i < x_.size(); ++i) {
      residuals_[i] = y_[i] - mean_ - slope_ * (x_[i] - centre_);
    }
  }

  [[nodiscard]] double sigma_squared() const {
    const double n = static_cast<double>(x_.size());
    double squares = 0;
    double within = 0;
    for (const double residual : residuals_) {
      const bool inside = std::abs(residual) <= huber_k * scale_;
      const double bounded = huber_weight(residual, scale_) * residual;
      squares += bounded * bounded;
      within += inside ? 1 : 0;
    }
    const double free = freedom(scale_);
    if (!(scale_ > 0) || !(free > 0) || within == 0) return with_prior(0, 0);
    const double mean = within / n;
    const double variance = n > 1 ? n * mean * (1 - mean) / (n - 1) : 0;
    const double kappa = 1 + (n - free) * variance / (n * mean * mean);
    const double factor = kappa / mean;
    return with_prior(squares / free * factor * factor, free);
  }

  std::span<const double> x_;
  std::span<const double> y_;
  const LinePrior& prior_;
  std::vector<double> residuals_;
  std::vector<double> weights_;
  std::vector<double> sorted_;
  double centre_ = 0;
  double spread_ = 0;  ///< sum of squares of x about its mean
  double mean_ = 0;    ///< of the line at the centre
  double slope_ = 0;
  double scale_ = 0;
};

}  // namespace

double RobustLine::freedom_at(double x, double more, double with_sigma) const {
  const double centre = slope_variance > 0 ? -covariance / slope_variance : 0;
  const double turned = (x - centre) * (x - centre) * slope_variance;
  const double of_line = variance_at(x);
  const double moving = of_line - (1 - told) * turned + with_sigma;
  const double all = of_line + more;
  return moving > 0 ? freedom * std::max(1.0, (all / moving) * (all / moving)) : freedom;
}

std::optional<RobustLine> robust_line(std::span<const double> x, std::span<const double> y,
                                      const LinePrior& prior) {
  if (x.empty()) return std::nullopt;
  const auto [least, most] = std::ranges::minmax(x);
  const bool slope_told = prior.slope_sd || least < most;
  const std::size_t parameters = prior.slope_sd ? 1 : 2;
  const bool scale_told = prior.scale_points > 0 || x.size() > parameters;
  if (!slope_told || !scale_told) return std::nullopt;
  Search search{x, y, prior};
  search.run();
  return search.line();
}

}  // namespace sparewell::care
