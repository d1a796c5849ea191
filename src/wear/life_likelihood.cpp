#include "wear/life_likelihood.hpp"

#include <algorithm>
#include <cmath>

namespace sparewell::wear {
namespace {

double dot(const double* a, const double* b, Eigen::Index n) {
  double sum = 0;
  for (Eigen::Index i = 0; i < n; ++i) sum += a[i] * b[i];
  return sum;
}

/// log(exp(a) + exp(b)) without overflow.
double log_add(double a, double b) {
  const double larger = std::max(a, b);
  return larger + std::log1p(std::exp(std::min(a, b) - larger));
}

}  // namespace

/// Sums over the lives that the derivatives are made of; only lower triangles are filled.
struct LifeLikelihood::Sums {
  Sums(Eigen::Index scales, Eigen::Index factors)
      : gradient{Eigen::VectorXd::Zero(1 + scales + factors)},
        hessian{Eigen::MatrixXd::Zero(1 + scales + factors, 1 + scales + factors)},
        mean(static_cast<std::size_t>(factors)),
        first_factor{1 + scales} {}

  void add_square(double weight, const double* z) {
    const auto n = static_cast<Eigen::Index>(mean.size());
    for (Eigen::Index j = 0; j < n; ++j) {
      double* column = &hessian(first_factor, first_factor + j);
      const double scaled = weight * z[j];
      for (Eigen::Index i = j; i < n; ++i) column[i] += scaled * z[i];
    }
  }

  double value = 0;
  Eigen::VectorXd gradient;
  Eigen::MatrixXd hessian;
  std::vector<double> mean;  ///< gradient of the log wear age of the life at hand
  Eigen::Index first_factor;
};

LifeLikelihood::LifeLikelihood(std::size_t scale_count, std::size_t factor_count)
    : scales_{static_cast<Eigen::Index>(scale_count)},
      factors_{static_cast<Eigen::Index>(factor_count)},
      factors_at_wear_endings_{Eigen::VectorXd::Zero(factors_)} {}

void LifeLikelihood::add(const ObservedLife& life) {
  lives_.push_back({static_cast<Eigen::Index>(span_log_days_.size()),
                    static_cast<Eigen::Index>(life.days.size()),
                    static_cast<Eigen::Index>(life.scale), life.worn_out});
  for (const double days : life.days) span_log_days_.push_back(std::log(days));
  span_factors_.insert(span_factors_.end(), life.factors.begin(), life.factors.end());
  if (!life.worn_out) return;
  ++wear_endings_;
  for (Eigen::Index i = 0; i < factors_; ++i) {
    factors_at_wear_endings_[i] += life.at_end[static_cast<std::size_t>(i)];
  }
}

double LifeLikelihood::log_wear(Eigen::Index span, const double* beta) const {
  return span_log_days_[static_cast<std::size_t>(span)] + dot(factors_of(span), beta, factors_);
}

double LifeLikelihood::log_wear_age(const Life& life, const double* beta) const {
  double log_age = log_wear(life.first_span, beta);
  for (Eigen::Index s = 1; s < life.spans; ++s) {
    log_age = log_add(log_age, log_wear(life.first_span + s, beta));
  }
  return log_age;
}

double LifeLikelihood::value(const Eigen::VectorXd& theta) const {
  const double shape = std::exp(theta[0]);
  const double* beta = theta.data() + 1 + scales_;
  double sum = static_cast<double>(wear_endings_) * theta[0] +
               dot(factors_at_wear_endings_.data(), beta, factors_);
  for (const Life& life : lives_) {
    const double log_age = log_wear_age(life, beta);
    const double log_hazard = shape * (log_age - theta[1 + life.scale]);
    sum -= std::exp(log_hazard);
    if (life.worn_out) sum += log_hazard - log_age;
  }
  return sum;
}

void LifeLikelihood::mean_factors(const Life& life, const double* beta, double log_age,
                                  double* mean) const {
  if (life.spans == 1) {
    std::copy_n(factors_of(life.first_span), factors_, mean);
    return;
  }
  std::fill_n(mean, factors_, 0.0);
  for (Eigen::Index s = life.first_span; s < life.first_span + life.spans; ++s) {
    const double part = std::exp(log_wear(s, beta) - log_age);
    const double* z = factors_of(s);
    for (Eigen::Index i = 0; i < factors_; ++i) mean[i] += part * z[i];
  }
}

/// The second derivative of the log wear age is the spread of z over the spans around its mean.
void LifeLikelihood::add_spread(const Life& life, const double* beta, double log_age, double weight,
                                Sums& sums) const {
  if (life.spans == 1) return;
  for (Eigen::Index s = life.first_span; s < life.first_span + life.spans; ++s) {
    sums.add_square(weight * std::exp(log_wear(s, beta) - log_age), factors_of(s));
  }
  sums.add_square(-weight, sums.mean.data());
}

/// With h = k (log x - log lambda), H = exp(h) and d one for a wear ending, a life adds
/// d (log k + h - log x + beta . z(end)) - H.
void LifeLikelihood::add_derivatives(const Life& life, double shape, double log_age, double h,
                                     double hazard, Sums& sums) const {
  const double d = life.worn_out ? 1 : 0;
  const double excess = d - hazard;
  const Eigen::Index scale = 1 + life.scale;
  sums.value += d * (h - log_age) - hazard;
  sums.gradient[0] += excess * h + d;
  sums.gradient[scale] -= shape * excess;
  sums.hessian(0, 0) += excess * h - hazard * h * h;
  sums.hessian(scale, 0) += shape * (hazard * h - excess);
  sums.hessian(scale, scale) -= hazard * shape * shape;
  const double by_mean = excess * shape - d;
  const double with_shape = shape * (excess - hazard * h);
  const double with_scale = hazard * shape * shape;
  for (Eigen::Index i = 0; i < factors_; ++i) {
    const double z = sums.mean[static_cast<std::size_t>(i)];
    sums.gradient[sums.first_factor + i] += by_mean * z;
    sums.hessian(sums.first_factor + i, 0) += with_shape * z;
    sums.hessian(sums.first_factor + i, scale) += with_scale * z;
  }
  sums.add_square(-with_scale, sums.mean.data());
}

Derivatives LifeLikelihood::derivatives(const Eigen::VectorXd& theta) const {
  const double shape = std::exp(theta[0]);
  const double* beta = theta.data() + 1 + scales_;
  Sums sums{scales_, factors_};
  for (const Life& life : lives_) {
    const double log_age = log_wear_age(life, beta);
    const double h = shape * (log_age - theta[1 + life.scale]);
    const double hazard = std::exp(h);
    mean_factors(life, beta, log_age, sums.mean.data());
    add_derivatives(life, shape, log_age, h, hazard, sums);
    const double d = life.worn_out ? 1 : 0;
    add_spread(life, beta, log_age, (d - hazard) * shape - d, sums);
  }
  sums.value += static_cast<double>(wear_endings_) * theta[0] +
                dot(factors_at_wear_endings_.data(), beta, factors_);
  sums.gradient.tail(factors_) += factors_at_wear_endings_;
  const Eigen::MatrixXd full = sums.hessian.selfadjointView<Eigen::Lower>();
  return {sums.value, std::move(sums.gradient), full};
}

Eigen::VectorXd LifeLikelihood::start_near(const Eigen::VectorXd& theta) const {
  const double shape = std::exp(theta[0]);
  const double* beta = theta.data() + 1 + scales_;
  Eigen::VectorXd log_sums = shape * theta.segment(1, scales_);
  Eigen::VectorXd endings = Eigen::VectorXd::Ones(scales_);
  for (const Life& life : lives_) {
    log_sums[life.scale] = log_add(log_sums[life.scale], shape * log_wear_age(life, beta));
    if (life.worn_out) endings[life.scale] += 1;
  }
  Eigen::VectorXd start = theta;
  start.segment(1, scales_) = (log_sums.array() - endings.array().log()) / shape;
  return start;
}

}  // namespace sparewell::wear
