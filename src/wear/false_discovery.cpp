#include "wear/false_discovery.hpp"

#include <algorithm>
#include <numeric>
#include <stdexcept>

namespace sparewell::wear {
namespace {

bool all_are_chances(std::span<const double> values) {
  return std::ranges::all_of(values, [](double p) { return p >= 0 && p <= 1; });
}

}  // namespace

double chance_of_at_least(int count, std::span<const double> chances) {
  if (!all_are_chances(chances)) throw std::invalid_argument{"A chance must lie from 0 to 1."};
  if (count <= 0) return 1;
  // mass[n] is the chance of n successes so far; whoever has reached `count` stays there.
  std::vector<double> mass(static_cast<std::size_t>(count), 0.0);
  mass[0] = 1;
  double reached = 0;
  std::size_t trials = 0;
  for (const double p : chances) {
    const std::size_t most = std::min(++trials, mass.size() - 1);
    if (trials >= mass.size()) reached += p * mass.back();
    for (std::size_t n = most; n > 0; --n) mass[n] = (1 - p) * mass[n] + p * mass[n - 1];
    mass[0] *= 1 - p;
  }
  return std::min(reached, 1.0);
}

std::vector<double> adjusted_for_false_discoveries(std::span<const double> p_values) {
  if (!all_are_chances(p_values)) throw std::invalid_argument{"A p value must lie from 0 to 1."};
  std::vector<std::size_t> order(p_values.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::sort(order, {}, [&](std::size_t i) { return p_values[i]; });
  std::vector<double> adjusted(p_values.size());
  const auto tests = static_cast<double>(p_values.size());
  double least = 1;
  for (std::size_t rank = order.size(); rank > 0; --rank) {
    const std::size_t i = order[rank - 1];
    least = std::min(least, p_values[i] * tests / static_cast<double>(rank));
    adjusted[i] = least;
  }
  return adjusted;
}

}  // namespace sparewell::wear
