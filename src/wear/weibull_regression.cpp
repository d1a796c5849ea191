#include "wear/weibull_regression.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include <Eigen/Cholesky>
#include <Eigen/QR>
#include <fmt/format.h>

#include "wear/life_likelihood.hpp"

namespace sparewell::wear {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double collinear = 1e-9;            // relative size of what is left of a covariate
constexpr double clearly_independent = 1e-3;  // likewise, squared
constexpr double undetermined =
    1e3;                           // standard error in units of one over the square root of events
constexpr double no_gain = 1e-10;  // of log-likelihood, relative: a variance of 0 is as good
constexpr Index enough_rows_to_start = 4000;
constexpr double moderate = 5;  // for standardised parameters in logs
constexpr double moment_of_log =
    1.28;  // standard deviation of the log of a Weibull times its shape

/// Covariates with mean 0 and standard deviation 1, log times with mean 0: the search then moves
/// among numbers of the order of one, whatever the units.
struct Standardised {
  MatrixXd covariates;  ///< one column an observation
  VectorXd mean;
  VectorXd deviation;
  VectorXd log_time;
  double log_unit = 0;  ///< what was taken off each log time: their mean
  double log_time_deviation = 0;
};

std::string name_of(const LifeTable& table, Index column) {
  const auto at = static_cast<std::size_t>(column);
  if (at < table.covariate_names.size()) return table.covariate_names[at];
  return fmt::format("number {}", column + 1);
}

Expected<void> check(const LifeTable& table) {
  const Index n = table.time.size();
  if (n == 0) return refuse("There are no observations to fit a life to.");
  if (static_cast<Index>(table.event.size()) != n ||
      (table.covariates.cols() > 0 && table.covariates.rows() != n)) {
    return refuse("Times, events and covariates must have the same number of rows.");
  }
  if (!table.group.empty() &&
      (static_cast<Index>(table.group.size()) != n ||
       std::ranges::any_of(table.group, [&](std::size_t g) { return g >= table.group.size(); }))) {
    return refuse("Every row must have a group, counted from 0 without large gaps.");
  }
  Index events = 0;
  for (Index i = 0; i < n; ++i) {
    if (!(table.time[i] > 0) || !std::isfinite(table.time[i])) {
      return refuse(fmt::format("The time of observation {} is {}, but times must be above 0.",
                                i + 1, table.time[i]));
    }
    events += table.event[static_cast<std::size_t>(i)] ? 1 : 0;
  }
  if (events == 0) return refuse("There are no events, so no life can be estimated.");
  for (Index j = 0; j < table.covariates.cols(); ++j) {
    if (table.covariates.col(j).allFinite()) continue;
    return refuse(fmt::format("Covariate {} has a value that is not a number.", name_of(table, j)));
  }
  return {};
}

Standardised standardised(const LifeTable& table) {
  Standardised made;
  const auto n = static_cast<double>(table.time.size());
  const Index p = table.covariates.cols();
  made.log_time = table.time.array().log();
  made.log_unit = made.log_time.mean();
  made.log_time.array() -= made.log_unit;
  made.log_time_deviation = std::sqrt(made.log_time.squaredNorm() / n);
  made.mean.resize(p);
  made.deviation.resize(p);
  made.covariates.resize(p, table.time.size());
  for (Index j = 0; j < p; ++j) {
    made.mean[j] = table.covariates.col(j).mean();
    const VectorXd centred = table.covariates.col(j).array() - made.mean[j];
    made.deviation[j] = std::sqrt(centred.squaredNorm() / n);
    made.covariates.row(j) = centred.transpose() / made.deviation[j];
  }
  return made;
}

Expected<void> check_covariates(const LifeTable& table, const Standardised& data) {
  const Index p = data.mean.size();
  for (Index j = 0; j < p; ++j) {
    if (data.deviation[j] > 1e-12 * std::abs(data.mean[j])) continue;
    return refuse(
        fmt::format("Covariate {} is the same in every row; leave it out.", name_of(table, j)));
  }
  // Where the correlations are far from singular the costlier test has nothing to find.
  const MatrixXd squares = data.covariates * data.covariates.transpose();
  const auto n = static_cast<double>(data.log_time.size());
  if (p == 0 || squares.ldlt().vectorD().minCoeff() > clearly_independent * n) return {};
  Eigen::ColPivHouseholderQR<MatrixXd> factored{data.covariates.transpose()};
  factored.setThreshold(collinear);
  if (factored.rank() == p) return {};
  const Index dependent = factored.colsPermutation().indices()[factored.rank()];
  return refuse(fmt::format("Covariate {} follows from the other covariates; leave it out.",
                            name_of(table, dependent)));
}

/// Of every `step`-th row.
LifeLikelihood likelihood_of(const LifeTable& table, const Standardised& data, Grouping grouping,
                             Index step = 1) {
  const auto p = static_cast<std::size_t>(data.mean.size());
  LifeLikelihood likelihood{1, p, grouping};
  likelihood.reserve(table.event.size() / static_cast<std::size_t>(step) + 1);
  for (Index i = 0; i < data.log_time.size(); i += step) {
    const std::span<const double> factors{data.covariates.data() + i * data.mean.size(), p};
    const auto row = static_cast<std::size_t>(i);
    const std::size_t group = grouping == Grouping::none ? 0 : table.group[row];
    likelihood.add({0, table.event[row], {&data.log_time[i], 1}, factors, factors, group});
  }
  return likelihood;
}

/// Back to the units of the table. The search was over (log shape, log scale, beta) with
/// coefficients -beta; (intercept, coefficients, log(1 / shape)) is linear in these.
LifeFit in_units_of_table(const Maximum& maximum, const MatrixXd& covariance,
                          const Standardised& data, const LifeLikelihood& likelihood) {
  const Index p = data.mean.size();
  // Rows: log(1/shape), intercept, coefficients.
  MatrixXd jacobian = MatrixXd::Zero(2 + p, likelihood.parameters());
  jacobian(0, 0) = -1;
  jacobian(1, 1) = 1;
  for (Index j = 0; j < p; ++j) {
    jacobian(1, 2 + j) = data.mean[j] / data.deviation[j];
    jacobian(2 + j, 2 + j) = -1 / data.deviation[j];
  }
  const VectorXd parameters = jacobian * maximum.at;
  const VectorXd errors = (jacobian * covariance * jacobian.transpose()).diagonal().cwiseSqrt();

  LifeFit fit;
  fit.shape = std::exp(maximum.at[0]);
  fit.intercept = parameters[1] + data.log_unit;
  fit.scale = std::exp(fit.intercept);
  fit.coefficients = parameters.tail(p);
  fit.log_scale_error = errors[0];
  fit.intercept_error = errors[1];
  fit.coefficient_errors = errors.tail(p);
  if (likelihood.is_shared()) {
    fit.theta = std::exp(maximum.at[2 + p]);
    fit.log_theta_error = std::sqrt(covariance(2 + p, 2 + p));
  }
  fit.n = static_cast<int>(likelihood.lives());
  fit.events = static_cast<int>(likelihood.wear_endings());
  fit.log_likelihood = maximum.derivatives.value - fit.events * data.log_unit;
  fit.iterations = maximum.iterations;
  return fit;
}

VectorXd start_from_moments(const LifeLikelihood& likelihood, const Standardised& data) {
  VectorXd start = VectorXd::Zero(likelihood.parameters());
  if (data.log_time_deviation > 1e-9) {
    start[0] = std::log(moment_of_log / data.log_time_deviation);
  }
  return likelihood.start_near(start);
}

/// The fit of a few thousand rows, which leaves the search among all of them little to do; for
/// short tables, and where the few rows have no moderate fit, a start from moments.
VectorXd start_of(const LifeTable& table, const Standardised& data, const LifeLikelihood& all) {
  const Index step = data.log_time.size() / enough_rows_to_start;
  if (step > 1) {
    const LifeLikelihood few = likelihood_of(table, data, Grouping::none, step);
    const Maximum found = maximise(few, start_from_moments(few, data));
    if (found.converged && found.at.cwiseAbs().maxCoeff() < moderate) return found.at;
  }
  return start_from_moments(all, data);
}

Expected<LifeFit> fit_at(const Maximum& maximum, const LifeTable& table, const Standardised& data,
                         const LifeLikelihood& likelihood) {
  const Eigen::LLT<MatrixXd> information{-maximum.derivatives.hessian};
  if (!maximum.converged || information.info() != Eigen::Success) {
    return refuse(
        fmt::format("The life could not be fitted. {} Perhaps all events have the same "
                    "time, or a covariate separates events from the rest.",
                    maximum.note));
  }
  const Index size = likelihood.parameters();
  const MatrixXd covariance = information.solve(MatrixXd::Identity(size, size));
  const auto events = static_cast<double>(likelihood.wear_endings());
  const VectorXd errors = covariance.diagonal().cwiseSqrt() * std::sqrt(events);
  for (Index j = 0; j < data.mean.size(); ++j) {
    if (errors[2 + j] * std::exp(maximum.at[0]) < undetermined) continue;
    return refuse(
        fmt::format("The effect of covariate {} has no finite estimate, because it "
                    "separates the events from the rest; leave it out.",
                    name_of(table, j)));
  }
  return in_units_of_table(maximum, covariance, data, likelihood);
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

Expected<LifeFit> fit_with_multiplier(const LifeTable& table, const Standardised& data,
                                      const Maximum& plain, LifeFit without) {
  const LifeLikelihood shared = likelihood_of(table, data, Grouping::shared_multiplier);
  const std::set<std::size_t> groups{table.group.begin(), table.group.end()};
  without.groups = static_cast<int>(groups.size());
  const auto maximum = maximum_with_multiplier(shared, plain);
  if (!maximum) return without;
  if (!maximum->converged) {
    return refuse(fmt::format(
        "The life could not be fitted with a multiplier for each group. {} Perhaps some groups "
        "have all the events; fit it without groups.",
        maximum->note));
  }
  auto fit = fit_at(*maximum, table, data, shared);
  if (fit) fit->groups = without.groups;
  return fit;
}

}  // namespace

Expected<LifeFit> fit_weibull_life(const LifeTable& table) {
  if (auto sane = check(table); !sane) return tl::unexpected{sane.error()};
  const Standardised data = standardised(table);
  if (auto sane = check_covariates(table, data); !sane) return tl::unexpected{sane.error()};

  const LifeLikelihood plain = likelihood_of(table, data, Grouping::none);
  const Maximum maximum = maximise(plain, start_of(table, data, plain));
  auto fit = fit_at(maximum, table, data, plain);
  if (!fit || table.group.empty()) return fit;
  return fit_with_multiplier(table, data, maximum, std::move(*fit));
}

}  // namespace sparewell::wear
