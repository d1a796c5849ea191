#include "wear/averaged_hazard.hpp"

#include <math.h>  // before Boost's PCHIP, which in 1.74 calls isnan without a namespace

#include <algorithm>
#include <array>
#include <cmath>

#include <boost/math/interpolators/pchip.hpp>

namespace sparewell::wear {
namespace {

constexpr double alike = 1e-3;  // moves chances by 4e-4 at most

using Interpolator = boost::math::interpolators::pchip<std::vector<double>>;

/// -log of the chance to last for so many days in each span, averaged over the laws. Chances here are
/// a millionth or more, so that differences from 1 keep nine digits.
double averaged(const PossibleLives& lives, const LawArray& hazard_so_far,
             const Eigen::ArrayXd& span_days) {
  LawArray age = lives.wear_age;
  for (Eigen::Index span = 0; span < span_days.size(); ++span) {
    if (span_days[span] > 0) age += lives.rates.col(span) * span_days[span];
  }
  const LawArray hazard = (lives.shape * (age.log() - lives.log_scale)).exp();
  const LawArray further = (hazard - hazard_so_far).max(0) / lives.person_rate;
  const double lasts = (-lives.person_shape * (1 + further).log()).exp().mean();
  return -std::log(std::max(lasts, 1e-300));
}

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
  const LawArray so_far = (lives.shape * (lives.wear_age.log() - lives.log_scale)).exp();
  const std::size_t n = points.size();
  const bool agree = std::ranges::all_of(std::array{n / 4, n / 2, n - n / 3}, [&](std::size_t i) {
    return std::abs(averaged(lives, so_far, points[i].span_days) / points[i].hazard - 1) < alike;
  });
  if (agree) return std::nullopt;
  std::vector<double> x;
  std::vector<double> value;
  std::vector<double> log_factor;
  for (const Point& point : points) {
    x.push_back(std::log(point.wear));
    value.push_back(std::log(averaged(lives, so_far, point.span_days)));
    log_factor.push_back(value.back() - std::log(point.hazard));
  }
  const double slope = (value[n - 1] - value[n - 2]) / (x[n - 1] - x[n - 2]);
  return AveragedHazard{std::make_shared<const Curve>(
      Curve{x.front(), x.back(), value.back(), slope,
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
