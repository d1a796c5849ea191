#include "wear/kind_posterior.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <Eigen/Cholesky>

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

/// A belief about the difference of an item's log scale to its material's.
void add_item_belief(const Belief& belief, Eigen::Index item, Eigen::Index material, double value,
                     Derivatives& sum) {
  const double p = precision(belief);
  const double off = value - belief.mean;
  sum.value += log_density(belief, value);
  sum.gradient[item] -= p * off;
  sum.gradient[material] += p * off;
  sum.hessian(item, item) -= p;
  sum.hessian(material, material) -= p;
  sum.hessian(item, material) += p;
  sum.hessian(material, item) += p;
}

/// log median = log scale + c / shape: its slope in log shape is -c / shape, its curvature c /
/// shape.
void add_median_belief(const Belief& belief, Eigen::Index scale, const Eigen::VectorXd& at,
                       Derivatives& sum) {
  const double from_shape = log_log_2 * std::exp(-at[0]);
  const double log_median = at[scale] + from_shape;
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

KindPosterior::KindPosterior(const KindPrior& prior, const LifeLikelihood& likelihood,
                             const std::vector<Eigen::Index>& material_of, double item_spread)
    : prior_{prior},
      likelihood_{likelihood},
      material_of_{material_of},
      item_spread_{item_spread},
      layout_{static_cast<Eigen::Index>(material_of.size()),
              static_cast<Eigen::Index>(prior.materials.size())} {}

Belief KindPosterior::item_belief(Eigen::Index item, const Eigen::VectorXd& at) const {
  const Eigen::Index material = material_of_[static_cast<std::size_t>(item)];
  return {at[layout_.material(material)], item_spread_};
}

double KindPosterior::value(const Eigen::VectorXd& at) const {
  double sum = likelihood_.value(at.head(likelihood_.parameters()));
  sum += log_density(prior_.log_shape, at[0]);
  for (Eigen::Index i = 0; i < layout_.items; ++i) {
    sum += log_density(item_belief(i, at), at[layout_.item(i)]);
  }
  Eigen::Index next = layout_.beta();
  for (const Belief& belief : prior_.beta) sum += log_density(belief, at[next++]);
  sum += log_density(prior_.log_theta, at[next++]);
  const double from_shape = log_log_2 * std::exp(-at[0]);
  for (const Belief& belief : prior_.log_median) {
    sum += log_density(belief, at[next++] + from_shape);
  }
  return sum;
}

Derivatives KindPosterior::derivatives(const Eigen::VectorXd& at) const {
  const Eigen::Index inner = likelihood_.parameters();
  const Derivatives data = likelihood_.derivatives(at.head(inner));
  Derivatives sum = prior_derivatives(at);
  sum.value += data.value;
  sum.gradient.head(inner) += data.gradient;
  sum.hessian.topLeftCorner(inner, inner) += data.hessian;
  return sum;
}

Derivatives KindPosterior::prior_derivatives(const Eigen::VectorXd& at) const {
  Derivatives sum{0, Eigen::VectorXd::Zero(at.size()), Eigen::MatrixXd::Zero(at.size(), at.size())};
  add_belief(prior_.log_shape, 0, at[0], sum);
  for (Eigen::Index i = 0; i < layout_.items; ++i) {
    const Belief belief = item_belief(i, at);
    const Eigen::Index material = material_of_[static_cast<std::size_t>(i)];
    add_item_belief(belief, layout_.item(i), layout_.material(material), at[layout_.item(i)], sum);
  }
  Eigen::Index next = layout_.beta();
  for (const Belief& belief : prior_.beta) {
    add_belief(belief, next, at[next], sum);
    ++next;
  }
  add_belief(prior_.log_theta, next, at[next], sum);
  for (const Belief& belief : prior_.log_median) add_median_belief(belief, ++next, at, sum);
  return sum;
}

Eigen::VectorXd KindPosterior::prior_mode() const {
  Eigen::VectorXd at(layout_.parameters());
  at[0] = prior_.log_shape.mean;
  Eigen::Index next = layout_.beta();
  for (const Belief& belief : prior_.beta) at[next++] = belief.mean;
  at[next++] = prior_.log_theta.mean;
  for (const Belief& belief : prior_.log_median) {
    at[next++] = belief.mean - log_log_2 * std::exp(-at[0]);
  }
  for (Eigen::Index i = 0; i < layout_.items; ++i) {
    at[layout_.item(i)] = at[layout_.material(material_of_[static_cast<std::size_t>(i)])];
  }
  return at;
}

Eigen::VectorXd KindPosterior::start() const {
  Eigen::VectorXd at = prior_mode();
  const Eigen::Index inner = likelihood_.parameters();
  at.head(inner) = likelihood_.start_near(at.head(inner));
  return at;
}

double KindPosterior::least_prior_precision() const {
  double least = std::min(precision(prior_.log_shape), precision(prior_.log_theta));
  for (const Belief& belief : prior_.log_median) least = std::min(least, precision(belief));
  for (const Belief& belief : prior_.beta) least = std::min(least, precision(belief));
  return std::min(least, precision({0, item_spread_}));
}

double KindPosterior::evidence(const Maximum& maximum) const {
  const Eigen::LLT<Eigen::MatrixXd> factored{-maximum.derivatives.hessian};
  if (factored.info() != Eigen::Success) return -HUGE_VAL;
  const double half_log_determinant = factored.matrixLLT().diagonal().array().log().sum();
  const double log_spread = std::log(item_spread_);
  return maximum.derivatives.value - half_log_determinant -
         static_cast<double>(layout_.items) * log_spread +
         log_density(prior_.log_item_spread, log_spread);
}

}  // namespace sparewell::wear
