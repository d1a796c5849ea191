/// Weibull accelerated life by maximum likelihood, without priors: the plain statistical model.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include <Eigen/Core>

#include "clinic/refusal.hpp"

namespace sparewell::wear {

/// One row an observation.
struct LifeTable {
  Eigen::VectorXd time;        ///< positive, any unit
  std::vector<bool> event;     ///< false: right-censored at `time`
  Eigen::MatrixXd covariates;  ///< rows as `time`, one column a covariate; may have no columns
  std::vector<std::string> covariate_names;
  /// Whose multiplier on the hazard each row shares, counted from 0; empty: no multiplier.
  std::vector<std::size_t> group;
};

/// log T = intercept + coefficients . z + error / shape, error of the standard smallest extreme
/// value distribution (the parametrisation of R's survreg, whose scale is 1/shape).
struct LifeFit {
  double shape = 1;
  double scale = 1;  ///< exp(intercept): Weibull scale where every covariate is zero
  double intercept = 0;
  Eigen::VectorXd coefficients;
  /// Standard errors of intercept, coefficients, and log(1/shape), from the observed information.
  double intercept_error = 0;
  Eigen::VectorXd coefficient_errors;
  double log_scale_error = 0;
  /// Variance of the Gamma multiplier with mean 1 that rows of one group share. 0 where the
  /// likelihood is greatest without it: then all else is the fit without multiplier, and
  /// log_theta_error is empty.
  double theta = 0;
  std::optional<double> log_theta_error;
  double log_likelihood = 0;  ///< of the times themselves, not of their logs
  int n = 0;
  int events = 0;
  int groups = 0;  ///< 0 when the table has none
  int iterations = 0;
};

/// Refuses with one sentence that says what to do: no events, non-positive times, covariates that
/// are constant or linearly dependent, groups that do not match the rows, or estimates that would
/// run away: a covariate that separates the events from the rest, times without any spread, a
/// multiplier whose variance passes 1000.
[[nodiscard]] Expected<LifeFit> fit_weibull_life(const LifeTable& table);

}  // namespace sparewell::wear
