/// Runs R's survreg on a table and reads back its time and estimates.
#pragma once

#include <optional>
#include <vector>

#include "wear/weibull_regression.hpp"

namespace sparewell::bench {

struct SurvregTiming {
  double seconds = 0;             ///< best of twenty fits, without reading the rows
  std::vector<double> estimates;  ///< intercept, coefficients, scale, log-likelihood
};

/// Empty when Rscript or the package survival is not there. Three covariates.
[[nodiscard]] std::optional<SurvregTiming> time_survreg(const wear::LifeTable& table);

}  // namespace sparewell::bench
