/// Which one of several exposures made the onsets, or none of them, by Bayes.
#pragma once

#include <span>
#include <vector>

#include "care/rate_ratio.hpp"

namespace sparewell::care {

/// A Gamma distribution of a rate of onsets a day.
struct RatePrior {
  double shape = 1;
  double mean_per_year = 1;
};

/// What is believed before the log is read.
struct SuspectPrior {
  /// That none of what is recorded is the cause: about one third of those with a dermatitis of
  /// the residual limb had an allergic contact dermatitis (J Am Acad Dermatol 42 (2000) 501-507).
  double none = 2.0 / 3.0;
  /// Onsets whatever is worn. Our choice, wide on purpose, as the next.
  RatePrior background{1, 0.5};
  /// Onsets that the cause adds while it is worn.
  RatePrior added{1, 4};
};

/// How much the days of the onsets speak for each exposure being the cause, against none being it
/// (1: nothing). Under the hypothesis "none" onsets come at a constant rate a; under "exposure j"
/// at the rate a, and a + c while it is worn; a and c are Gamma distributed and independent. With n
/// onsets in T days, n1 of them in the T1 days under exposure, the marginal likelihood is
///   sum over k of binomial(n1, k) G(a: n - k, T) G(c: k, T1),
/// where G(m, t) = Gamma(shape + m) / Gamma(shape) * rate^shape / (rate + t)^(shape + m). Both are
/// divided by the marginal probability of n onsets at all, which has the same form with
/// binomial(n, k) T^(n-k) T1^k: only their times count, as in the self-controlled case series, so
/// that what is worn always is neither suspect nor cleared for reactions being many.
[[nodiscard]] double weight_of_times(const OnsetCounts& counts, const SuspectPrior& prior);

struct SuspectChances {
  std::vector<double> chances;  ///< of each exposure, in the order given
  double none = 1;              ///< of none of them
};

/// The posterior: every exposure has the same weight before, together 1 - prior.none; at most one
/// is the cause. All `counts` are of the same onsets and days.
[[nodiscard]] SuspectChances suspect_chances(std::span<const OnsetCounts> counts,
                                             const SuspectPrior& prior = {});

}  // namespace sparewell::care
