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
  Sums(Eigen::Index parameters, Eigen::Index scales, Eigen::Index factors, Eigen::Index groups)
      : gradient{Eigen::VectorXd::Zero(parameters)},
        hessian{Eigen::MatrixXd::Zero(parameters, parameters)},
        group_gradients{Eigen::MatrixXd::Zero(1 + scales + factors, groups)},
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
  Eigen::MatrixXd group_gradients;  ///< of the summed hazard of each group, one a column
  std::vector<double> mean;         ///< gradient of the log wear age of the life at hand
  Eigen::Index first_factor;
};

LifeLikelihood::LifeLikelihood(std::size_t scale_count, std::size_t factor_count, Grouping grouping)
    : scales_{static_cast<Eigen::Index>(scale_count)},
      factors_{static_cast<Eigen::Index>(factor_count)},
      grouping_{grouping},
      factors_at_wear_endings_{Eigen::VectorXd::Zero(factors_)} {}

void LifeLikelihood::keep(const ObservedLife& life, std::span<const double> days,
                          std::span<const double> factors, double sign) {
  lives_.push_back({static_cast<Eigen::Index>(span_log_days_.size()),
                    static_cast<Eigen::Index>(days.size()), static_cast<Eigen::Index>(life.scale),
                    static_cast<Eigen::Index>(is_shared() ? life.group : 0),
                    life.worn_out && sign > 0, sign});
  for (const double each : days) span_log_days_.push_back(std::log(each));
  span_factors_.insert(span_factors_.end(), factors.begin(), factors.end());
}

void LifeLikelihood::add(const ObservedLife& life) {
  const std::size_t group = is_shared() ? life.group : 0;
  if (group >= group_endings_.size()) group_endings_.resize(group + 1, 0);
  keep(life, life.days, life.factors, 1);
  if (!life.entry_days.empty()) keep(life, life.entry_days, life.entry_factors, -1);
  ++observed_;
  if (!life.worn_out) return;
  ++wear_endings_;
  ending_counts_.add(group_endings_[group]++);
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

LifeLikelihood::Aged LifeLikelihood::aged(const Life& life, const Eigen::VectorXd& theta) const {
  const double log_age = log_wear_age(life, theta.data() + 1 + scales_);
  const double h = std::exp(theta[0]) * (log_age - theta[1 + life.scale]);
  return {log_age, h, life.sign * std::exp(h)};
}

double LifeLikelihood::theta_of_groups(const Eigen::VectorXd& theta) const {
  return is_shared() ? std::exp(theta[theta.size() - 1]) : 0;
}

/// Without grouping all lives are one group of variance 0, which adds -H.
std::vector<MultiplierTerms> LifeLikelihood::group_terms(const std::vector<double>& hazards,
                                                         const Eigen::VectorXd& theta) const {
  const double variance = theta_of_groups(theta);
  std::vector<MultiplierTerms> terms;
  terms.reserve(hazards.size());
  for (std::size_t g = 0; g < hazards.size(); ++g) {
    // What is left after the part before entry can only fall below 0 by rounding.
    const double hazard = hazards[g] < 0 ? 0 : hazards[g];
    terms.push_back(multiplier_terms(static_cast<double>(group_endings_[g]), hazard, variance));
  }
  return terms;
}

double LifeLikelihood::value(const Eigen::VectorXd& theta) const {
  const double* beta = theta.data() + 1 + scales_;
  double sum = static_cast<double>(wear_endings_) * theta[0] +
               dot(factors_at_wear_endings_.data(), beta, factors_);
  std::vector<double> hazards(group_endings_.size(), 0.0);
  for (const Life& life : lives_) {
    const Aged now = aged(life, theta);
    hazards[static_cast<std::size_t>(life.group)] += now.hazard;
    if (life.worn_out) sum += now.h - now.log_age;
  }
  for (const MultiplierTerms& group : group_terms(hazards, theta)) sum += group.value;
  return sum + ending_counts_.terms(theta_of_groups(theta)).value;
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

/// With h = k (log x - log lambda), w the weight of its hazard and d one for a wear ending, the
/// derivatives of d (log k + h - log x + beta . z(end)) - w exp(h), w held fixed.
void LifeLikelihood::add_derivatives(const Life& life, double shape, const Aged& aged,
                                     double weighted, Sums& sums) const {
  const double h = aged.h;
  const double d = life.worn_out ? 1 : 0;
  const double excess = d - weighted;
  const Eigen::Index scale = 1 + life.scale;
  sums.value += d * (h - aged.log_age);
  sums.gradient[0] += excess * h + d;
  sums.gradient[scale] -= shape * excess;
  sums.hessian(0, 0) += excess * h - weighted * h * h;
  sums.hessian(scale, 0) += shape * (weighted * h - excess);
  sums.hessian(scale, scale) -= weighted * shape * shape;
  const double by_mean = excess * shape - d;
  const double with_shape = shape * (excess - weighted * h);
  const double with_scale = weighted * shape * shape;
  for (Eigen::Index i = 0; i < factors_; ++i) {
    const double z = sums.mean[static_cast<std::size_t>(i)];
    sums.gradient[sums.first_factor + i] += by_mean * z;
    sums.hessian(sums.first_factor + i, 0) += with_shape * z;
    sums.hessian(sums.first_factor + i, scale) += with_scale * z;
  }
  sums.add_square(-with_scale, sums.mean.data());
}

void LifeLikelihood::add_group_gradient(const Life& life, double shape, const Aged& aged,
                                        Sums& sums) const {
  double* gradient = &sums.group_gradients(0, life.group);
  gradient[0] += aged.hazard * aged.h;
  const double by_log_age = aged.hazard * shape;
  gradient[1 + life.scale] -= by_log_age;
  for (Eigen::Index i = 0; i < factors_; ++i) {
    gradient[sums.first_factor + i] += by_log_age * sums.mean[static_cast<std::size_t>(i)];
  }
}

/// What the groups add beyond their lives with fixed weights: how the weights move.
void LifeLikelihood::add_groups(const std::vector<MultiplierTerms>& groups, double variance,
                                Sums& sums) const {
  for (const MultiplierTerms& group : groups) sums.value += group.value;
  const EndingCounts::Terms counts = ending_counts_.terms(variance);
  sums.value += counts.value;
  if (!is_shared()) return;
  const Eigen::Index last = parameters() - 1;
  sums.gradient[last] += counts.by_log_theta;
  sums.hessian(last, last) += counts.by_log_theta_twice;
  for (std::size_t g = 0; g < groups.size(); ++g) {
    const MultiplierTerms& group = groups[g];
    auto gradient = sums.group_gradients.col(static_cast<Eigen::Index>(g));
    sums.gradient[last] += group.by_log_theta;
    sums.hessian(last, last) += group.by_log_theta_twice;
    sums.hessian.row(last).head(last) += group.by_both * gradient.transpose();
    gradient *= std::sqrt(group.by_hazard_twice);
  }
  sums.hessian.topLeftCorner(last, last)
      .selfadjointView<Eigen::Lower>()
      .rankUpdate(sums.group_gradients);
}

Derivatives LifeLikelihood::derivatives(const Eigen::VectorXd& theta) const {
  const double shape = std::exp(theta[0]);
  const double* beta = theta.data() + 1 + scales_;
  std::vector<Aged> ages;
  ages.reserve(lives_.size());
  std::vector<double> hazards(group_endings_.size(), 0.0);
  for (const Life& life : lives_) {
    ages.push_back(aged(life, theta));
    hazards[static_cast<std::size_t>(life.group)] += ages.back().hazard;
  }
  const auto groups = group_terms(hazards, theta);
  Sums sums{parameters(), scales_, factors_, static_cast<Eigen::Index>(groups.size())};
  for (std::size_t i = 0; i < lives_.size(); ++i) {
    const Life& life = lives_[i];
    const double weighted = groups[static_cast<std::size_t>(life.group)].mean * ages[i].hazard;
    mean_factors(life, beta, ages[i].log_age, sums.mean.data());
    add_derivatives(life, shape, ages[i], weighted, sums);
    if (is_shared()) add_group_gradient(life, shape, ages[i], sums);
    const double d = life.worn_out ? 1 : 0;
    add_spread(life, beta, ages[i].log_age, (d - weighted) * shape - d, sums);
  }
  add_groups(groups, theta_of_groups(theta), sums);
  sums.value += static_cast<double>(wear_endings_) * theta[0] +
                dot(factors_at_wear_endings_.data(), beta, factors_);
  sums.gradient.segment(1 + scales_, factors_) += factors_at_wear_endings_;
  const Eigen::MatrixXd full = sums.hessian.selfadjointView<Eigen::Lower>();
  return {sums.value, std::move(sums.gradient), full};
}

Eigen::VectorXd LifeLikelihood::start_near(const Eigen::VectorXd& theta) const {
  const double shape = std::exp(theta[0]);
  const double* beta = theta.data() + 1 + scales_;
  Eigen::VectorXd log_sums = shape * theta.segment(1, scales_);
  Eigen::VectorXd endings = Eigen::VectorXd::Ones(scales_);
  for (const Life& life : lives_) {
    if (life.sign < 0) continue;
    log_sums[life.scale] = log_add(log_sums[life.scale], shape * log_wear_age(life, beta));
    if (life.worn_out) endings[life.scale] += 1;
  }
  Eigen::VectorXd start = theta;
  start.segment(1, scales_) = (log_sums.array() - endings.array().log()) / shape;
  return start;
}

}  // namespace sparewell::wear
