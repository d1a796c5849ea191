#include "wear/weibull_regression.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <utility>

#include <Eigen/Cholesky>

#include "clinic/say.hpp"
#include "wear/life_likelihood.hpp"
#include "wear/standardised_lives.hpp"

namespace sparewell::wear {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double no_gain = 1e-10;  // of log-likelihood, relative: a variance of 0 is as good
constexpr double undetermined =
    1e3;  // standard error in units of one over the square root of events
constexpr double moment_of_log = 1.28;  // deviation of the log of a Weibull life times its shape
constexpr Index enough_rows_to_start = 4000;
// Of standardised lives:
constexpr double moderate = 5;                      // logs of parameters to start a search from
constexpr double separated = 20;                    // log hazards that far apart
const double largest_log_shape = std::log(1e6);     // beyond it no spread is left
const double largest_log_variance = std::log(1e3);  // of the multiplier

/// Of every `step`-th row.
LifeLikelihood likelihood_of(const LifeTable& table, const StandardisedLives& lives,
                             Grouping grouping, Index step = 1) {
  const auto p = static_cast<std::size_t>(lives.mean.size());
  LifeLikelihood likelihood{1, p, grouping};
  likelihood.reserve(table.event.size() / static_cast<std::size_t>(step) + 1);
  for (Index i = 0; i < lives.log_time.size(); i += step) {
    const std::span<const double> factors{lives.covariates.data() + i * lives.mean.size(), p};
    const auto row = static_cast<std::size_t>(i);
    const std::size_t group = grouping == Grouping::none ? 0 : table.group[row];
    likelihood.add({0, table.event[row], {&lives.log_time[i], 1}, factors, factors, group});
  }
  return likelihood;
}

/// Of the times themselves, from that of the standardised ones.
double log_likelihood_of_table(double standardised, const LifeTable& table,
                               const StandardisedLives& lives) {
  const double stretched = lives.log_time_deviation - 1;
  double sum = standardised;
  for (Index i = 0; i < lives.log_time.size(); ++i) {
    if (!table.event[static_cast<std::size_t>(i)]) continue;
    sum -= stretched * lives.log_time[i] + lives.log_time_mean + std::log(lives.log_time_deviation);
  }
  return sum;
}

/// Back to the units of the table: the search was over (log shape, log scale, beta) with
/// coefficients -beta.
LifeFit in_units_of_table(const Maximum& maximum, const MatrixXd& covariance,
                          const LifeTable& table, const StandardisedLives& lives) {
  const Index p = lives.mean.size();
  const double unit = lives.log_time_deviation;
  const VectorXd errors = covariance.diagonal().cwiseSqrt();
  // The intercept is where the covariates are 0, which is so many deviations below their means.
  VectorXd to_intercept = VectorXd::Zero(maximum.at.size());
  to_intercept[1] = 1;
  to_intercept.segment(2, p) = lives.mean.cwiseQuotient(lives.deviation);

  LifeFit fit;
  fit.shape = std::exp(maximum.at[0]) / unit;
  fit.log_scale_error = errors[0];
  fit.intercept = unit * to_intercept.dot(maximum.at) + lives.log_time_mean;
  fit.intercept_error = unit * std::sqrt(to_intercept.dot(covariance * to_intercept));
  fit.scale = std::exp(fit.intercept);
  fit.coefficients = -unit * maximum.at.segment(2, p).cwiseQuotient(lives.deviation);
  fit.coefficient_errors = unit * errors.segment(2, p).cwiseQuotient(lives.deviation);
  if (maximum.at.size() > 2 + p) {
    fit.theta = std::exp(maximum.at[2 + p]);
    fit.log_theta_error = errors[2 + p];
  }
  fit.n = static_cast<int>(table.event.size());
  fit.events = static_cast<int>(std::count(table.event.begin(), table.event.end(), true));
  fit.log_likelihood = log_likelihood_of_table(maximum.derivatives.value, table, lives);
  fit.iterations = maximum.iterations;
  return fit;
}

VectorXd start_from_moments(const LifeLikelihood& likelihood) {
  VectorXd start = VectorXd::Zero(likelihood.parameters());
  start[0] = std::log(moment_of_log);
  return likelihood.start_near(start);
}

/// The fit of a few thousand rows, which leaves the search among all of them little to do; for
/// short tables, and where the few rows have no moderate fit, a start from moments.
VectorXd start_of(const LifeTable& table, const StandardisedLives& lives,
                  const LifeLikelihood& all) {
  const Index step = lives.log_time.size() / enough_rows_to_start;
  if (step > 1) {
    const LifeLikelihood few = likelihood_of(table, lives, Grouping::none, step);
    const Maximum found = maximise(few, start_from_moments(few));
    if (found.converged && found.at.cwiseAbs().maxCoeff() < moderate) return found.at;
  }
  return start_from_moments(all);
}

/// Whether the search ran towards parameters without end: then why, and what to do.
Expected<void> check_finite(const Maximum& maximum, Index covariates) {
  const bool shared = maximum.at.size() > 2 + covariates;
  if (shared && maximum.at[2 + covariates] > largest_log_variance) {
    return refuse(
        say("The groups differ so much that the variance of their multiplier has no finite "
            "estimate, as when one group has all the events; fit the table without groups."));
  }
  if (maximum.at[0] < largest_log_shape) return {};
  return refuse(
      covariates == 0
          ? say("All events have the same time and no life lasted longer, so the spread of "
                "lives cannot be estimated; add rows, or record times more finely.")
          : say("The covariates explain the time of every event without any spread, so the "
                "spread of lives cannot be estimated; leave out covariates or add rows."));
}

Refusal no_finite_effect(const LifeTable& table, Index covariate) {
  return {say(
      "The effect of covariate {} has no finite estimate, because it separates the events from the "
      "rest; leave it out.",
      covariate_name(table, covariate))};
}

/// Refuses where there is no greatest likelihood to speak of.
Expected<MatrixXd> covariance_at(const Maximum& maximum, const LifeTable& table) {
  const Index covariates = table.covariates.cols();
  if (auto finite = check_finite(maximum, covariates); !finite) {
    return tl::unexpected{finite.error()};
  }
  const double shape = std::exp(maximum.at[0]);
  const Eigen::LLT<MatrixXd> information{-maximum.derivatives.hessian};
  if (!maximum.converged || information.info() != Eigen::Success) {
    for (Index j = 0; j < covariates; ++j) {
      if (shape * std::abs(maximum.at[2 + j]) > separated)
        return tl::unexpected{no_finite_effect(table, j)};
    }
    return refuse(maximum.at.size() > 2 + covariates
                      ? say("No greatest likelihood was found in {} steps; fit the table without "
                            "groups.",
                            maximum.iterations)
                      : say("No greatest likelihood was found in {} steps; leave out covariates "
                            "or add rows.",
                            maximum.iterations));
  }
  const Index size = maximum.at.size();
  MatrixXd covariance = information.solve(MatrixXd::Identity(size, size));
  const auto events = static_cast<double>(std::count(table.event.begin(), table.event.end(), true));
  for (Index j = 0; j < covariates; ++j) {
    const double error = shape * std::sqrt(covariance(2 + j, 2 + j) * events);
    if (!(error < undetermined)) return tl::unexpected{no_finite_effect(table, j)};
  }
  return covariance;
}

Expected<LifeFit> fit_at(const Maximum& maximum, const LifeTable& table,
                         const StandardisedLives& lives) {
  const auto covariance = covariance_at(maximum, table);
  if (!covariance) return tl::unexpected{covariance.error()};
  return in_units_of_table(maximum, *covariance, table, lives);
}

/// The greatest likelihood with a multiplier, or nothing where none is greater than `plain`: there
/// the search runs down to ever smaller variances, along which the likelihood rises to that of the
/// plain model.
std::optional<Maximum> maximum_with_multiplier(const LifeLikelihood& shared, const Maximum& plain) {
  std::optional<Maximum> best;
  for (const double variance : {0.5, 0.02}) {
    VectorXd start(shared.parameters());
    start << plain.at, std::log(variance);
    Maximum found = maximise(shared, start);
    const double gain = found.derivatives.value - plain.derivatives.value;
    if (!(gain > no_gain * (1 + std::abs(plain.derivatives.value)))) continue;
    if (!best || found.derivatives.value > best->derivatives.value) best = std::move(found);
  }
  return best;
}

Expected<LifeFit> fit_with_multiplier(const LifeTable& table, const StandardisedLives& lives,
                                      const Maximum& plain, LifeFit without) {
  const LifeLikelihood shared = likelihood_of(table, lives, Grouping::shared_multiplier);
  const std::set<std::size_t> groups{table.group.begin(), table.group.end()};
  without.groups = static_cast<int>(groups.size());
  const auto maximum = maximum_with_multiplier(shared, plain);
  if (!maximum) return without;
  auto fit = fit_at(*maximum, table, lives);
  if (fit) fit->groups = without.groups;
  return fit;
}

}  // namespace

Expected<LifeFit> fit_weibull_life(const LifeTable& table) {
  if (auto sane = check_lives(table); !sane) return tl::unexpected{sane.error()};
  const StandardisedLives lives = standardised(table);
  if (auto sane = check_covariates(table, lives); !sane) return tl::unexpected{sane.error()};

  const LifeLikelihood plain = likelihood_of(table, lives, Grouping::none);
  const Maximum maximum = maximise(plain, start_of(table, lives, plain));
  auto fit = fit_at(maximum, table, lives);
  if (!fit || table.group.empty()) return fit;
  return fit_with_multiplier(table, lives, maximum, std::move(*fit));
}

}  // namespace sparewell::wear
