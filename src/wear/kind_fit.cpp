#include "wear/kind_fit.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>

#include "clinic/say.hpp"
#include "wear/kind_note.hpp"
#include "wear/kind_posterior.hpp"

namespace sparewell::wear {
namespace {

constexpr double steepest_shape = 50;  // lives within about 2.5 % of each other
constexpr int final_steps = 100;
/// From no difference that could be seen to items that last half or twice as long.
constexpr std::array<double, 6> item_spreads{0.02, 0.04, 0.08, 0.16, 0.32, 0.64};

/// A maximum of the posterior for one spread among items.
struct Fit {
  double item_spread = 0;
  Maximum maximum;
  double least_precision = 0;
  KindLayout layout;
};

KindPosterior posterior_with(const KindData& data, double item_spread) {
  return {data.prior, data.likelihood, data.material_of, item_spread};
}

Fit fit_with(const KindData& data, double item_spread) {
  const KindPosterior posterior = posterior_with(data, item_spread);
  return {item_spread, maximise(posterior, posterior.start()), posterior.least_prior_precision(),
          posterior.layout()};
}

/// From where the fit with another spread ended. There only the beliefs differ, so the likelihood,
/// which costs the time, is not computed again.
Fit fit_from(const Fit& before, const KindData& data, double item_spread, int most_steps) {
  const KindPosterior posterior = posterior_with(data, item_spread);
  const Eigen::VectorXd& at = before.maximum.at;
  const Derivatives others = posterior_with(data, before.item_spread).prior_derivatives(at);
  const Derivatives own = posterior.prior_derivatives(at);
  Derivatives there = before.maximum.derivatives;
  there.value += own.value - others.value;
  there.gradient += own.gradient - others.gradient;
  there.hessian += own.hessian - others.hessian;
  return {item_spread, maximise(posterior, at, std::move(there), most_steps),
          posterior.least_prior_precision(), posterior.layout()};
}

double evidence(const KindData& data, const Fit& fit) {
  return posterior_with(data, fit.item_spread).evidence(fit.maximum);
}

/// The place of the largest value between the grid points around the best one, by a parabola.
double peak(const std::array<double, item_spreads.size()>& values) {
  const auto best =
      static_cast<std::size_t>(std::distance(values.begin(), std::ranges::max_element(values)));
  const double log_best = std::log(item_spreads[best]);
  if (best == 0 || best + 1 == values.size()) return item_spreads[best];
  const double before = values[best - 1] - values[best];
  const double after = values[best + 1] - values[best];
  const double step = std::log(item_spreads[1] / item_spreads[0]);
  if (!(before + after < 0) || !std::isfinite(before + after)) return item_spreads[best];
  return std::exp(log_best + step * 0.5 * (before - after) / (before + after));
}

Fit best_fit(const KindData& data) {
  const double believed = std::exp(data.prior.log_item_spread.mean);
  Fit fit = fit_with(data, believed);
  if (data.items.size() < 2 || data.likelihood.wear_endings() == 0) return fit;
  std::array<double, item_spreads.size()> values{};
  for (std::size_t i = 0; i < values.size(); ++i) {
    // Near the maximum before, one step of Newton's method leaves an error far below the
    // differences that matter.
    fit = fit_from(fit, data, item_spreads[i], 1);
    values[i] = evidence(data, fit);
  }
  return fit_from(fit, data, peak(values), final_steps);
}

/// Inverse of the curvature, in which no direction is known less well than the vaguest prior says:
/// that only matters where the search stopped short of a maximum.
Eigen::MatrixXd covariance_at(const Derivatives& maximum, double least_precision) {
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solved{-maximum.hessian};
  const Eigen::VectorXd precisions = solved.eigenvalues().cwiseMax(0.01 * least_precision);
  return solved.eigenvectors() * precisions.cwiseInverse().asDiagonal() *
         solved.eigenvectors().transpose();
}

/// Positions in the layout in the order in which results are told: log shape, materials, beta, log
/// theta, and then the items.
std::vector<Eigen::Index> told_order(const KindLayout& layout) {
  std::vector<Eigen::Index> order{0};
  for (Eigen::Index i = 0; i < layout.materials; ++i) order.push_back(layout.material(i));
  for (Eigen::Index i = layout.beta(); i <= layout.log_theta(); ++i) order.push_back(i);
  for (Eigen::Index i = 0; i < layout.items; ++i) order.push_back(layout.item(i));
  return order;
}

/// `mean` and `covariance` in the told order.
LawDraws draws_of(const Eigen::VectorXd& mean, const Eigen::MatrixXd& covariance,
                  const KindLayout& layout, double item_spread) {
  const Eigen::Index materials = layout.materials;
  const Eigen::Index beta = 1 + materials;
  const Eigen::Index log_theta = beta + static_cast<Eigen::Index>(factor_count);
  const Eigen::MatrixXd normal = standard_draws(mean.size() + materials);
  const Eigen::MatrixXd root = covariance.llt().matrixL();
  const Eigen::MatrixXd all = (root * normal.topRows(mean.size())).colwise() + mean;
  LawDraws draws;
  draws.shape = all.row(0).array().min(std::log(2 * steepest_shape)).exp().transpose();
  draws.log_scale.resize(all.cols(), materials + layout.items);
  draws.log_scale.leftCols(materials) =
      (all.middleRows(1, materials) + item_spread * normal.bottomRows(materials)).transpose();
  draws.log_scale.rightCols(layout.items) = all.bottomRows(layout.items).transpose();
  draws.beta = all.middleRows(beta, static_cast<Eigen::Index>(factor_count)).transpose();
  draws.theta = all.row(log_theta).array().exp().transpose();
  return draws;
}

KindLife life_at(const Fit& fit, const KindData& data) {
  const Eigen::VectorXd& at = fit.maximum.at;
  const KindLayout& layout = fit.layout;
  KindLife life;
  life.kind = data.prior.kind;
  life.shape = std::exp(at[0]);
  for (Eigen::Index i = 0; i < layout.materials; ++i) {
    life.scale[data.prior.materials[static_cast<std::size_t>(i)]] =
        std::exp(at[layout.material(i)]);
  }
  for (Eigen::Index i = 0; i < layout.items; ++i) {
    life.item_scale[data.items[static_cast<std::size_t>(i)]] = std::exp(at[layout.item(i)]);
  }
  life.item_spread = fit.item_spread;
  for (std::size_t f = 0; f < factor_count; ++f) {
    life.beta[f] = at[layout.beta() + static_cast<Eigen::Index>(f)];
  }
  life.theta = std::exp(at[layout.log_theta()]);
  const auto order = told_order(layout);
  const Eigen::MatrixXd covariance =
      covariance_at(fit.maximum.derivatives, fit.least_precision)(order, order);
  const Eigen::Index told = layout.parameters() - layout.items;
  life.covariance = covariance.topLeftCorner(told, told);
  life.draws = draws_of(at(order), covariance, layout, fit.item_spread);
  life.units = static_cast<int>(data.likelihood.lives());
  life.wear_endings = static_cast<int>(data.likelihood.wear_endings());
  life.note = fit.maximum.converged ? runaway_note(life) : fit.maximum.note;
  life.converged = life.note.empty();
  return life;
}

}  // namespace

KindLife fit_kind(const KindData& data) {
  const Fit fit = best_fit(data);
  if (fit.maximum.at[0] < std::log(steepest_shape)) return life_at(fit, data);

  // Many lives of the same length pull the shape up without end. A belief that outweighs them holds
  // it.
  KindData held = data;
  const double endings = static_cast<double>(data.likelihood.wear_endings());
  held.prior.log_shape = {std::log(steepest_shape), 1e-3 / std::sqrt(1 + endings)};
  KindLife life = life_at(fit_with(held, std::exp(held.prior.log_item_spread.mean)), held);
  life.converged = false;
  life.note = say(
      "The recorded lives of {}s are so few or so much alike that their shape was held at {:.0f}; "
      "check whether they were replaced on fixed dates instead of when worn out.",
      shown_word(life.kind), steepest_shape);
  return life;
}

}  // namespace sparewell::wear
