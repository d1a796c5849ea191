#include "wear/mixed_hazard.hpp"

#include <math.h>  // before Boost's PCHIP, which in 1.74 calls isnan without a namespace

#include <cmath>

#include <boost/math/interpolators/pchip.hpp>
#include <boost/math/tools/roots.hpp>

namespace sparewell::wear {
namespace {

constexpr int precise_bits = 24;  // of a log wear: thousandths of a day in a hundred years

using Interpolator = boost::math::interpolators::pchip<std::vector<double>>;

/// -log of the chance to last for so many days in each span, averaged over the laws.
/// Chances here are a hundred-thousandth or more, so differences from 1 keep ten digits.
double mixed(const PossibleLives& lives, const LawArray& hazard_so_far,
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

struct MixedHazard::Curve {
  double first = 0;  // log wear
  double last = 0;
  double first_value = 0;  // log M
  double last_value = 0;
  double first_slope = 0;
  double last_slope = 0;
  Interpolator between;

  Curve(std::vector<double> x, std::vector<double> y)
      : first{x.front()},
        last{x.back()},
        first_value{y.front()},
        last_value{y.back()},
        first_slope{(y[1] - y[0]) / (x[1] - x[0])},
        last_slope{(y[y.size() - 1] - y[y.size() - 2]) / (x[x.size() - 1] - x[x.size() - 2])},
        between{std::move(x), std::move(y)} {}

  [[nodiscard]] double at(double log_wear) const {
    if (log_wear <= first) return first_value + first_slope * (log_wear - first);
    if (log_wear >= last) return last_value + last_slope * (log_wear - last);
    return between(log_wear);
  }

  [[nodiscard]] double log_wear_at(double value) const {
    if (value <= first_value) return first + (value - first_value) / first_slope;
    if (value >= last_value) return last + (value - last_value) / last_slope;
    std::uintmax_t most = 60;
    const auto [low, high] = boost::math::tools::toms748_solve(
        [&](double x) { return at(x) - value; }, first, last, first_value - value,
        last_value - value, boost::math::tools::eps_tolerance<double>{precise_bits}, most);
    return 0.5 * (low + high);
  }
};

MixedHazard::MixedHazard(const PossibleLives& lives, const std::vector<Point>& points) {
  const LawArray so_far =
      (lives.shape * (lives.wear_age.log() - lives.log_scale)).exp();
  std::vector<double> x;
  std::vector<double> y;
  for (const Point& point : points) {
    const double value = std::log(mixed(lives, so_far, point.span_days));
    // Where nearly every law has used the unit up the chance no longer moves; the curve must rise.
    const double least = y.empty() ? value : y.back() + 1e-9;
    x.push_back(std::log(point.wear));
    y.push_back(std::max(value, least));
  }
  curve_ = std::make_shared<const Curve>(std::move(x), std::move(y));
}

double MixedHazard::at(double wear) const {
  return std::exp(curve_->at(std::log(wear)));
}

double MixedHazard::wear_at(double hazard) const {
  return std::exp(curve_->log_wear_at(std::log(hazard)));
}

}  // namespace sparewell::wear
