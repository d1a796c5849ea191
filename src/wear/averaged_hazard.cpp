#include "wear/averaged_hazard.hpp"

// clang-format off
#include <math.h>  // first, because Boost 1.74's PCHIP calls isnan without a namespace
// clang-format on

#include <algorithm>
#include <array>
#include <cmath>

#include <boost/math/interpolators/pchip.hpp>

namespace sparewell::wear {
namespace {

constexpr double tiny_hazard = 0.01;
constexpr double alike = 1e-3;  // moves chances by 4e-4 at most

using Interpolator = boost::math::interpolators::pchip<std::vector<double>>;

/// In single precision, which the processor does four at a time. Small differences are formed so
/// that they keep four digits at least, which is far nearer than the laws are known.
class Laws {
 public:
  explicit Laws(const PossibleLives& lives)
      : age_{lives.wear_age.cast<float>()},
        shape_{lives.shape.cast<float>()},
        person_shape_{lives.person_shape.cast<float>()},
        rates_{lives.rates.cast<float>()},
        is_new_{!(lives.wear_age[0] > 0)} {
    const LawArray log_rate = lives.person_rate.log();
    const LawArray log_of =
        is_new_ ? (-lives.shape * lives.log_scale - log_rate).eval()
                : (lives.shape * (lives.wear_age.log() - lives.log_scale) - log_rate).eval();
    log_so_far_ = log_of.cast<float>();
    so_far_ = log_so_far_.exp();
  }

  /// -log of the chance to last for so many days in each span, averaged over the laws; by the best
  /// estimate it is `best_hazard`.
  [[nodiscard]] double averaged(const Eigen::ArrayXd& span_days, double best_hazard) const {
    Eigen::ArrayXf wear = Eigen::ArrayXf::Zero(age_.size());
    for (Eigen::Index span = 0; span < span_days.size(); ++span) {
      if (span_days[span] > 0) wear += rates_.col(span) * static_cast<float>(span_days[span]);
    }
    const bool tiny = best_hazard < tiny_hazard;
    const Eigen::ArrayXf mixed = person_shape_ * further(wear, tiny).log1p();
    if (tiny) return -std::log1p(static_cast<double>((-mixed).expm1().mean()));
    return -std::log(std::max<double>((-mixed).exp().mean(), 1e-300));
  }

 private:
  /// The hazard of so much wear to come over the rate of the person's multiplier.
  [[nodiscard]] Eigen::ArrayXf further(const Eigen::ArrayXf& wear, bool tiny) const {
    if (is_new_) return (shape_ * wear.log() + log_so_far_).exp();
    const Eigen::ArrayXf growth = shape_ * (wear / age_).log1p();
    // The difference keeps four digits unless the hazard is tiny, and takes half the time.
    if (!tiny) return (growth + log_so_far_).exp() - so_far_;
    // A factor may be too large for a float, and the hazard so far too small.
    constexpr float large = 20;
    return (growth > large)
        .select((growth + log_so_far_).exp(), so_far_ * growth.min(large).expm1());
  }

  Eigen::ArrayXf age_;
  Eigen::ArrayXf shape_;
  Eigen::ArrayXf person_shape_;
  Eigen::ArrayXXf rates_;
  bool is_new_;                // under all laws or under none
  Eigen::ArrayXf so_far_;      // the hazard over the rate
  Eigen::ArrayXf log_so_far_;  // of a new part: what does not depend on its wear
};

}  // namespace

struct AveragedHazard::Curve {
  double first = 0;  // log wear
  double last = 0;
  double last_value = 0;  // log M
  double last_slope = 0;
  Interpolator log_factor;
};

std::optional<AveragedHazard> AveragedHazard::over(const PossibleLives& lives,
                                                   const std::vector<Point>& points) {
  const Laws laws{lives};
  const std::size_t n = points.size();
  std::vector<double> averaged(n, -1);  // each when first asked for
  const auto averaged_at = [&](std::size_t i) {
    if (averaged[i] < 0) averaged[i] = laws.averaged(points[i].span_days, points[i].hazard);
    return averaged[i];
  };
  const bool agree = std::ranges::all_of(std::array{n / 4, n / 2, n - n / 3}, [&](std::size_t i) {
    return std::abs(averaged_at(i) / points[i].hazard - 1) < alike;
  });
  if (agree) return std::nullopt;
  std::vector<double> x;
  std::vector<double> value;
  std::vector<double> log_factor;
  for (std::size_t i = 0; i < n; ++i) {
    x.push_back(std::log(points[i].wear));
    value.push_back(std::log(averaged_at(i)));
    log_factor.push_back(value.back() - std::log(points[i].hazard));
  }
  const double slope = (value[n - 1] - value[n - 2]) / (x[n - 1] - x[n - 2]);
  return AveragedHazard{
      std::make_shared<const Curve>(Curve{x.front(), x.back(), value.back(), slope,
                                          Interpolator{std::move(x), std::move(log_factor)}})};
}

double AveragedHazard::at(double wear, double best_hazard) const {
  const double log_wear = std::log(wear);
  if (log_wear > curve_->last) {
    return std::exp(curve_->last_value + curve_->last_slope * (log_wear - curve_->last));
  }
  return best_hazard * std::exp(curve_->log_factor(std::max(log_wear, curve_->first)));
}

}  // namespace sparewell::wear
