/// How many early endings chance brings among units of which some share a patient.
#pragma once

#include <span>
#include <vector>

#include "wear/multiplier_points.hpp"

namespace sparewell::wear {

/// The cumulative hazard of each unit of one patient up to the age at which it counts as early, or
/// that it could reach; at a multiplier of 1.
using HazardsOfPatient = std::vector<double>;

/// P(N >= count) for the number N of early endings, when each patient's units share a multiplier
/// that is independent of other patients': mixed over the multiplier exactly but for quadrature,
/// and convolved over patients. With a multiplier of exactly 1 it is the Poisson-binomial tail. Only
/// positive numbers are added, so small tails keep their digits.
[[nodiscard]] double chance_of_early_endings(int count, std::span<const HazardsOfPatient> patients,
                                             std::span<const MultiplierPoint> multiplier);

/// E N.
[[nodiscard]] double expected_early_endings(std::span<const HazardsOfPatient> patients,
                                            std::span<const MultiplierPoint> multiplier);

}  // namespace sparewell::wear
