/// A table of lives in numbers of the order of one, and what makes a table impossible to fit.
#pragma once

#include <string>

#include <Eigen/Core>

#include "clinic/refusal.hpp"
#include "wear/weibull_regression.hpp"

namespace sparewell::wear {

/// Covariates and log times with mean 0 and standard deviation 1: the search then moves among
/// numbers of the order of one, whatever the units. Log times that are all alike stay 0.
struct StandardisedLives {
  Eigen::MatrixXd covariates;  ///< one column an observation
  Eigen::VectorXd mean;
  Eigen::VectorXd deviation;
  Eigen::VectorXd log_time;
  double log_time_mean = 0;
  double log_time_deviation = 1;  ///< 1 when all times are alike
};
/// Of a table that check_lives finds sane.
[[nodiscard]] StandardisedLives standardised(const LifeTable& table);

/// Refuses a table with rows that do not belong together, with numbers that cannot be, or without
/// events.
[[nodiscard]] Expected<void> check_lives(const LifeTable& table);
/// Refuses covariates that are constant or follow from each other.
[[nodiscard]] Expected<void> check_covariates(const LifeTable& table,
                                              const StandardisedLives& lives);

/// As a sentence calls it.
[[nodiscard]] std::string covariate_name(const LifeTable& table, Eigen::Index column);

}  // namespace sparewell::wear
