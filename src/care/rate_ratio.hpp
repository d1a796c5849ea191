/// How much more often something happens under an exposure than without it.
#pragma once

#include <optional>

namespace sparewell::care {

/// Onsets of one patient, with and without the exposure.
struct OnsetCounts {
  int exposed_onsets = 0;
  int exposed_days = 0;
  int onsets = 0;  ///< all, those under exposure included
  int days = 0;    ///< all, those under exposure included
};

/// The rate under exposure divided by the rate without; no value where it has no bound.
struct RateRatio {
  std::optional<double> estimate;
  double low = 0;
  std::optional<double> high;
};

/// The ratio with its exact interval of at least the wanted coverage. Given the number of onsets,
/// that of those under exposure is binomial with chance r T1 / (r T1 + T0); its interval by Clopper
/// and Pearson (Biometrika 26 (1934) 404-413, from memory) is one of r. This is the comparison of a
/// person with themselves of the self-controlled case series (Farrington, Biometrics 51 (1995)
/// 228-235, from memory) for one exposure, and R's poisson.test of two rates. nullopt without an
/// onset, and where all days or none are exposed. It holds for exposures that do not depend on the
/// onsets; that of a part which is taken away because of a reaction does a little.
[[nodiscard]] std::optional<RateRatio> rate_ratio(const OnsetCounts& counts,
                                                  double coverage = 0.95);

}  // namespace sparewell::care
