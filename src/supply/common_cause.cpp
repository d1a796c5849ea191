#include "supply/common_cause.hpp"

#include <array>
#include <cmath>

namespace sparewell::supply {
namespace {

struct Node {
  double x;
  double weight;
};
constexpr std::array<Node, 5> nodes{{{0, 0.5333333333333333},
                                     {1.3556261799742659, 0.2220759220056126},
                                     {-1.3556261799742659, 0.2220759220056126},
                                     {2.8569700138728056, 0.0112574113277207},
                                     {-2.8569700138728056, 0.0112574113277207}}};
/// Of the count's own variance; less changes no target.
constexpr double too_little = 1e-3;

struct MeanAndVariance {
  double mean = 0;
  double variance = 0;
};

MeanAndVariance spread_of(const Pmf& pmf) {
  const double mean = pmf.mean();
  double variance = 0;
  for (std::size_t n = 0; n < pmf.mass().size(); ++n) {
    const double away = static_cast<double>(n) - mean;
    variance += away * away * pmf.mass()[n];
  }
  return {mean, variance};
}

Pmf tilted(const Pmf& pmf, double log_factor, double around) {
  std::vector<double> mass = pmf.mass();
  double sum = 0;
  for (std::size_t n = 0; n < mass.size(); ++n) {
    mass[n] *= std::exp(log_factor * (static_cast<double>(n) - around));
    sum += mass[n];
  }
  for (double& each : mass) each /= sum;
  return Pmf{std::move(mass)};
}

/// The count under each value of the factor, whose logs are moved by `shift`.
std::vector<Pmf> under_factors(const Pmf& alone, double log_sd, double shift, double around) {
  std::vector<Pmf> parts;
  for (const Node& node : nodes) {
    parts.push_back(tilted(alone, log_sd * node.x + shift, around));
  }
  return parts;
}

}  // namespace

Pmf with_common_cause(const Pmf& alone, double log_sd) {
  const auto [mean, variance] = spread_of(alone);
  if (!(log_sd * mean * log_sd * mean > too_little * variance)) return alone;
  // Newton's method for the shift that keeps the mean: a tilt changes it by the variance.
  double shift = -log_sd * log_sd / 2;
  std::vector<Pmf> parts;
  constexpr int most_steps = 20;
  for (int step = 0; step < most_steps; ++step) {
    parts = under_factors(alone, log_sd, shift, mean);
    MeanAndVariance is;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      const auto of_part = spread_of(parts[i]);
      is.mean += nodes[i].weight * of_part.mean;
      is.variance += nodes[i].weight * of_part.variance;
    }
    if (std::abs(mean - is.mean) <= 1e-12 * mean || !(is.variance > 0)) break;
    shift += (mean - is.mean) / is.variance;
  }
  std::vector<double> weights;
  for (const Node& node : nodes) weights.push_back(node.weight);
  return mix(weights, parts);
}

}  // namespace sparewell::supply
