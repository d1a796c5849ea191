#include "supply/common_cause.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <iterator>

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

/// Adds the count so many pieces later, none below 0.
void add_moved(const Pmf& alone, std::ptrdiff_t by, double weight, std::vector<double>& mass) {
  const auto& from = alone.mass();
  const auto end = static_cast<std::ptrdiff_t>(from.size()) + by;
  if (end > std::ssize(mass)) mass.resize(static_cast<std::size_t>(end), 0.0);
  if (mass.empty()) mass.resize(1, 0.0);
  for (std::ptrdiff_t n = 0; n < std::ssize(from); ++n) {
    mass[static_cast<std::size_t>(std::max<std::ptrdiff_t>(0, n + by))] +=
        weight * from[static_cast<std::size_t>(n)];
  }
}

/// A large count under the factor f is that alone moved by its mean times f - 1: what it varies by
/// itself hardly matters then. A tilt would need chances far beyond those that are kept.
Pmf moved(const Pmf& alone, double log_sd, const MeanAndVariance& of) {
  constexpr double farthest = 5;  // standard deviations of the log of the factor
  const double step = std::min(0.5, std::sqrt(of.variance) / (log_sd * of.mean));
  const int steps = static_cast<int>(std::ceil(farthest / step));
  std::vector<double> mass;
  double sum = 0;
  for (int i = -steps; i <= steps; ++i) {
    const double x = step * i;
    const double weight = std::exp(-x * x / 2);
    const double by = of.mean * std::expm1(log_sd * x - log_sd * log_sd / 2);
    const double whole = std::floor(by);
    // Shared between the whole numbers beside it, so that the mean is kept.
    add_moved(alone, static_cast<std::ptrdiff_t>(whole), weight * (1 - (by - whole)), mass);
    add_moved(alone, static_cast<std::ptrdiff_t>(whole) + 1, weight * (by - whole), mass);
    sum += weight;
  }
  for (double& each : mass) each /= sum;
  Pmf made{std::move(mass)};
  // What was cut off below 0 and beyond the farthest factors has moved the mean a little.
  constexpr int steps_back = 4;
  for (int i = 0; i < steps_back; ++i) {
    const auto is = spread_of(made);
    made = tilted(made, (of.mean - is.mean) / is.variance, of.mean);
  }
  return made;
}

}  // namespace

Pmf with_common_cause(const Pmf& alone, double log_sd) {
  const auto of = spread_of(alone);
  const auto [mean, variance] = of;
  if (!(log_sd * mean * log_sd * mean > too_little * variance)) return alone;
  // Beyond that the factor moves the count by more than it varies alone, and five points would
  // stand apart.
  constexpr double most_tilted = 1;
  if (log_sd * mean > most_tilted * std::sqrt(variance)) return moved(alone, log_sd, of);
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
