#include "wear/kind_posterior.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sparewell::wear {
namespace {

const double log_log_2 = std::log(std::numbers::ln2);

double precision(const Belief& belief) {
  return 1 / (belief.spread * belief.spread);
}

double log_density(const Belief& belief, double value) {
  const double off = (value - belief.mean) / belief.spread;
  return -0.5 * off * off;
}

void add_belief(const Belief& belief, Eigen::Index at, double value, Derivatives& sum) {
  sum.value += log_density(belief, value);
  sum.gradient[at] -= precision(belief) * (value - belief.mean);
  sum.hessian(at, at) -= precision(belief);
}

/// log median = log scale + c / shape: its slope in log shape is -c / shape, its curvature c /
/// shape.
void add_median_belief(const Belief& belief, Eigen::Index scale, const Eigen::VectorXd& theta,
                       Derivatives& sum) {
  const double from_shape = log_log_2 * std::exp(-theta[0]);
  const double log_median = theta[scale] + from_shape;
  const double p = precision(belief);
  const double off = log_median - belief.mean;
  sum.value += log_density(belief, log_median);
  sum.gradient[scale] -= p * off;
  sum.gradient[0] += p * off * from_shape;
  sum.hessian(scale, scale) -= p;
  sum.hessian(0, scale) += p * from_shape;
  sum.hessian(scale, 0) += p * from_shape;
  sum.hessian(0, 0) -= p * (from_shape * from_shape + off * from_shape);
}

}  // namespace

double KindPosterior::value(const Eigen::VectorXd& theta) const {
  double sum = likelihood_.value(theta) + log_density(prior_.log_shape, theta[0]);
  const double from_shape = log_log_2 * std::exp(-theta[0]);
  Eigen::Index at = 1;
  for (const Belief& belief : prior_.log_median)
    sum += log_density(belief, theta[at++] + from_shape);
  for (const Belief& belief : prior_.beta) sum += log_density(belief, theta[at++]);
  return sum + log_density(prior_.log_theta, theta[at]);
}

Derivatives KindPosterior::derivatives(const Eigen::VectorXd& theta) const {
  Derivatives sum = likelihood_.derivatives(theta);
  add_belief(prior_.log_shape, 0, theta[0], sum);
  Eigen::Index at = 1;
  for (const Belief& belief : prior_.log_median) add_median_belief(belief, at++, theta, sum);
  for (const Belief& belief : prior_.beta) {
    add_belief(belief, at, theta[at], sum);
    ++at;
  }
  add_belief(prior_.log_theta, at, theta[at], sum);
  return sum;
}

Eigen::VectorXd KindPosterior::prior_mode() const {
  Eigen::VectorXd theta(likelihood_.parameters());
  theta[0] = prior_.log_shape.mean;
  Eigen::Index at = 1;
  for (const Belief& belief : prior_.log_median) {
    theta[at++] = belief.mean - log_log_2 * std::exp(-theta[0]);
  }
  for (const Belief& belief : prior_.beta) theta[at++] = belief.mean;
  theta[at] = prior_.log_theta.mean;
  return theta;
}

double KindPosterior::least_prior_precision() const {
  double least = std::min(precision(prior_.log_shape), precision(prior_.log_theta));
  for (const Belief& belief : prior_.log_median) least = std::min(least, precision(belief));
  for (const Belief& belief : prior_.beta) least = std::min(least, precision(belief));
  return least;
}

}  // namespace sparewell::wear
