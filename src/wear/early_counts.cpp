#include "wear/early_counts.hpp"

#include <algorithm>
#include <cmath>

namespace sparewell::wear {
namespace {

/// Chances of 0, 1, ... early endings, as many as there can be; but never more than the count asked
/// for, whose entry is for so many or more.
using Counts = std::vector<double>;

void add_trial(Counts& counts, double chance, std::size_t most) {
  if (counts.size() <= most) {
    counts.push_back(counts.back() * chance);
  } else {
    counts.back() += counts[most - 1] * chance;
  }
  const std::size_t last = counts.size() - 1;
  for (std::size_t n = last - 1; n > 0; --n) {
    counts[n] = counts[n] * (1 - chance) + counts[n - 1] * chance;
  }
  counts[0] *= 1 - chance;
}

Counts of_patient(const HazardsOfPatient& hazards, std::span<const MultiplierPoint> multiplier,
                  std::size_t most) {
  Counts mixed(std::min(hazards.size(), most) + 1, 0.0);
  for (const MultiplierPoint& point : multiplier) {
    Counts given{1};
    for (const double hazard : hazards) add_trial(given, -std::expm1(-point.value * hazard), most);
    for (std::size_t n = 0; n < mixed.size(); ++n) mixed[n] += point.weight * given[n];
  }
  return mixed;
}

Counts sum_of(const Counts& a, const Counts& b, std::size_t most) {
  Counts sum(std::min(a.size() + b.size() - 2, most) + 1, 0.0);
  for (std::size_t i = 0; i < a.size(); ++i) {
    for (std::size_t j = 0; j < b.size(); ++j) sum[std::min(i + j, most)] += a[i] * b[j];
  }
  return sum;
}

}  // namespace

double chance_of_early_endings(int count, std::span<const HazardsOfPatient> patients,
                               std::span<const MultiplierPoint> multiplier) {
  if (count <= 0) return 1;
  const auto most = static_cast<std::size_t>(count);
  Counts all{1};
  for (const HazardsOfPatient& hazards : patients) {
    all = sum_of(all, of_patient(hazards, multiplier, most), most);
  }
  return all.size() > most ? std::min(1.0, all[most]) : 0;
}

double expected_early_endings(std::span<const HazardsOfPatient> patients,
                              std::span<const MultiplierPoint> multiplier) {
  double expected = 0;
  for (const HazardsOfPatient& hazards : patients) {
    for (const double hazard : hazards) {
      for (const MultiplierPoint& point : multiplier) {
        expected -= point.weight * std::expm1(-point.value * hazard);
      }
    }
  }
  return expected;
}

}  // namespace sparewell::wear
