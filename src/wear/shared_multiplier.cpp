#include "wear/shared_multiplier.hpp"

#include <cmath>
#include <limits>
#include <stdexcept>

namespace sparewell::wear {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

/// log(1 + u) / u
double log_share(double u) {
  return u > 0 ? std::log1p(u) / u : 1;
}

/// (log(1 + u) - u / (1 + u)) / u, by its series where the difference would lose digits.
double excess_share(double u) {
  if (u > 0.02) return std::log1p(u) / u - 1 / (1 + u);
  double sum = 0;
  double power = u;
  for (int n = 2; n <= 12; ++n) {
    sum += power * (n - 1) / n;
    power *= -u;
  }
  return sum;
}

}  // namespace

Multiplier::Multiplier() : shape_{infinite}, rate_{infinite} {}

Multiplier::Multiplier(double shape, double rate) : shape_{shape}, rate_{rate} {
  if (!(shape_ > 0) || !(rate_ > 0) || std::isinf(shape_) != std::isinf(rate_)) {
    throw std::invalid_argument{"A multiplier needs a shape and a rate above 0."};
  }
}

Multiplier Multiplier::after(double theta, double endings, double hazard) {
  const double precision = 1 / theta;
  if (std::isinf(precision)) return {};
  return {precision + endings, precision + hazard};
}

double Multiplier::mean() const {
  return std::isinf(rate_) ? 1 : shape_ / rate_;
}

double Multiplier::variance() const {
  return std::isinf(rate_) ? 0 : shape_ / rate_ / rate_;
}

double Multiplier::mixed_hazard(double further) const {
  return std::isinf(rate_) ? further : shape_ * std::log1p(further / rate_);
}

double Multiplier::further_hazard(double mixed) const {
  return std::isinf(rate_) ? mixed : rate_ * std::expm1(mixed / shape_);
}

MultiplierTerms multiplier_terms(double endings, double hazard, double theta) {
  const double u = theta * hazard;
  const double left = 1 / (1 + u);
  const double share = u * left;
  MultiplierTerms made;
  made.value = -hazard * log_share(u) - endings * std::log1p(u);
  made.mean = (1 + theta * endings) * left;
  made.hazard_twice = made.mean * hazard * share;
  const double excess = hazard * excess_share(u);
  made.by_log_theta = excess - endings * share;
  made.hazard_and_log_theta = (hazard - endings) * left * share;
  made.by_log_theta_twice = made.hazard_and_log_theta - excess;
  return made;
}

void EndingCounts::add(std::size_t before) {
  if (before >= groups_with_more_.size()) groups_with_more_.resize(before + 1, 0.0);
  groups_with_more_[before] += 1;
}

EndingCounts::Terms EndingCounts::terms(double theta) const {
  Terms sum;
  for (std::size_t j = 1; j < groups_with_more_.size(); ++j) {
    const double more = static_cast<double>(j) * theta;
    const double part = more / (1 + more);
    sum.value += groups_with_more_[j] * std::log1p(more);
    sum.by_log_theta += groups_with_more_[j] * part;
    sum.by_log_theta_twice += groups_with_more_[j] * part * (1 - part);
  }
  return sum;
}

}  // namespace sparewell::wear
