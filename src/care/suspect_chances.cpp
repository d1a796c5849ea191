#include "care/suspect_chances.hpp"

#include <algorithm>
#include <cmath>

namespace sparewell::care {
namespace {

constexpr double days_a_year = 365.25;

double log_binomial(int n, int k) {
  return std::lgamma(n + 1.0) - std::lgamma(k + 1.0) - std::lgamma(n - k + 1.0);
}

/// log of the integral of x^m exp(-x t) over the prior of x.
double log_moment(const RatePrior& prior, int m, double t) {
  const double rate = prior.shape * days_a_year / prior.mean_per_year;
  return std::lgamma(prior.shape + m) - std::lgamma(prior.shape) + prior.shape * std::log(rate) -
         (prior.shape + m) * std::log(rate + t);
}

/// log of the sum of exp of the values, of which there is at least one.
double log_sum(const std::vector<double>& logs) {
  const double most = *std::ranges::max_element(logs);
  double sum = 0;
  for (const double each : logs) sum += std::exp(each - most);
  return most + std::log(sum);
}

}  // namespace

double weight_of_times(const OnsetCounts& counts, const SuspectPrior& prior) {
  if (counts.onsets == 0 || counts.exposed_days == 0) return 1;
  const double all = counts.days;
  const double exposed = counts.exposed_days;
  const auto term = [&](int k) {
    return log_moment(prior.background, counts.onsets - k, all) +
           log_moment(prior.added, k, exposed);
  };
  std::vector<double> at_these_times;
  for (int k = 0; k <= counts.exposed_onsets; ++k) {
    at_these_times.push_back(log_binomial(counts.exposed_onsets, k) + term(k));
  }
  std::vector<double> at_any_times;  // over T^n
  for (int k = 0; k <= counts.onsets; ++k) {
    at_any_times.push_back(log_binomial(counts.onsets, k) + k * std::log(exposed / all) + term(k));
  }
  return std::exp(log_sum(at_these_times) - log_sum(at_any_times));
}

SuspectChances suspect_chances(std::span<const OnsetCounts> counts, const SuspectPrior& prior) {
  SuspectChances made;
  if (counts.empty()) return made;
  const double each = (1 - prior.none) / static_cast<double>(counts.size());
  double sum = prior.none;
  for (const OnsetCounts& of : counts) {
    made.chances.push_back(each * weight_of_times(of, prior));
    sum += made.chances.back();
  }
  made.none = prior.none / sum;
  for (double& chance : made.chances) chance /= sum;
  return made;
}

}  // namespace sparewell::care
