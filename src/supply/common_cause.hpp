/// What makes all units of an item wear out sooner or later at once.
#pragma once

#include "supply/pmf.hpp"

namespace sparewell::supply {

/// The count when the rate of all that makes it up has one unknown factor in common, lognormal with
/// this standard deviation of its log and mean 1. Without it the parts are independent and the
/// count is `alone`. The count under a factor f is taken as P(n) f^n, scaled to sum to 1: exact for
/// Poisson counts, and the same as multiplying every unit's odds of needing a piece by f. The mean
/// stays that of `alone`. Gauss-Hermite quadrature with five points (Abramowitz and Stegun, table
/// 25.10, from memory). A count that the factor moves by more than it varies alone is moved as it
/// is, with the mean, over a fine grid of factors; its own variance is then a little too small for
/// large factors and a little too large for small ones.
[[nodiscard]] Pmf with_common_cause(const Pmf& alone, double log_sd);

}  // namespace sparewell::supply
