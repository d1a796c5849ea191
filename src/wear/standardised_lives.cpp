#include "wear/standardised_lives.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/Cholesky>
#include <Eigen/QR>

#include "clinic/say.hpp"

namespace sparewell::wear {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double collinear = 1e-9;            // relative size of what is left of a covariate
constexpr double clearly_independent = 1e-3;  // likewise, squared
constexpr double constant = 1e-12;            // deviation relative to the largest value

/// Mean 0 and standard deviation 1, but for numbers that are all alike.
struct Centred {
  VectorXd values;
  double mean = 0;
  double deviation = 0;
};

Centred centred(VectorXd values) {
  // In units of the largest, whose square neither overflows nor vanishes.
  const double unit = values.cwiseAbs().maxCoeff();
  if (!(unit > 0)) return {std::move(values), 0, 0};
  values /= unit;
  const double mean = values.mean();
  values.array() -= mean;
  const double deviation = std::sqrt(values.squaredNorm() / static_cast<double>(values.size()));
  if (!(deviation > constant)) return {VectorXd::Zero(values.size()), mean * unit, 0};
  values /= deviation;
  return {std::move(values), mean * unit, deviation * unit};
}

}  // namespace

std::string covariate_name(const LifeTable& table, Index column) {
  const auto at = static_cast<std::size_t>(column);
  if (at < table.covariate_names.size()) return table.covariate_names[at];
  return say("number {}", column + 1);
}

Expected<void> check_lives(const LifeTable& table) {
  const Index n = table.time.size();
  if (n == 0) return refuse(say("There are no observations to fit a life to."));
  if (static_cast<Index>(table.event.size()) != n ||
      (table.covariates.cols() > 0 && table.covariates.rows() != n)) {
    return refuse(say("Times, events and covariates must have the same number of rows."));
  }
  if (!table.group.empty() &&
      (static_cast<Index>(table.group.size()) != n ||
       std::ranges::any_of(table.group, [&](std::size_t g) { return g >= table.group.size(); }))) {
    return refuse(say("Every row must have a group, counted from 0 without large gaps."));
  }
  Index events = 0;
  for (Index i = 0; i < n; ++i) {
    if (!(table.time[i] > 0) || !std::isfinite(table.time[i])) {
      return refuse(say("The time of observation {} is {}, but times must be above 0.", i + 1,
                        table.time[i]));
    }
    events += table.event[static_cast<std::size_t>(i)] ? 1 : 0;
  }
  if (events == 0)
    return refuse(
        say("There are no events, so no life can be estimated; add rows whose life has ended."));
  for (Index j = 0; j < table.covariates.cols(); ++j) {
    if (table.covariates.col(j).allFinite()) continue;
    return refuse(say("Covariate {} has a value that is not a number.", covariate_name(table, j)));
  }
  return {};
}

StandardisedLives standardised(const LifeTable& table) {
  StandardisedLives made;
  Centred log_time = centred(table.time.array().log());
  made.log_time = std::move(log_time.values);
  made.log_time_mean = log_time.mean;
  if (log_time.deviation > 0) made.log_time_deviation = log_time.deviation;
  const Index p = table.covariates.cols();
  made.mean.resize(p);
  made.deviation.resize(p);
  made.covariates.resize(p, table.time.size());
  for (Index j = 0; j < p; ++j) {
    const Centred covariate = centred(table.covariates.col(j));
    made.mean[j] = covariate.mean;
    made.deviation[j] = covariate.deviation;
    made.covariates.row(j) = covariate.values;
  }
  return made;
}

Expected<void> check_covariates(const LifeTable& table, const StandardisedLives& lives) {
  const Index p = lives.mean.size();
  for (Index j = 0; j < p; ++j) {
    if (lives.deviation[j] > 0) continue;
    return refuse(
        say("Covariate {} is the same in every row; leave it out.", covariate_name(table, j)));
  }
  // Where the correlations are far from singular the costlier test has nothing to find.
  const MatrixXd squares = lives.covariates * lives.covariates.transpose();
  const auto n = static_cast<double>(lives.log_time.size());
  if (p == 0 || squares.ldlt().vectorD().minCoeff() > clearly_independent * n) return {};
  Eigen::ColPivHouseholderQR<MatrixXd> factored{lives.covariates.transpose()};
  factored.setThreshold(collinear);
  if (factored.rank() == p) return {};
  const Index dependent = factored.colsPermutation().indices()[factored.rank()];
  return refuse(say("Covariate {} follows from the other covariates; leave it out.",
                    covariate_name(table, dependent)));
}

}  // namespace sparewell::wear
