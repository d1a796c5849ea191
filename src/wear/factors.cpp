#include "wear/factors.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace sparewell::wear {
namespace {

constexpr std::array<std::string_view, factor_count> names{
    "activity", "kneeling_hours", "wear_hours", "sweating_low", "sweating_high", "impact_sport"};

double& at(FactorVector& factors, Factor factor) {
  return factors[static_cast<std::size_t>(factor)];
}

double hours_of_a_day(double hours) {
  return std::clamp(hours, 0.0, 24.0);
}

}  // namespace

std::string_view factor_name(Factor factor) {
  return names[static_cast<std::size_t>(factor)];
}

FactorVector updated_factors(FactorVector before, const Usage& usage) {
  if (usage.activity) at(before, Factor::activity) = static_cast<double>(*usage.activity) - 2;
  if (usage.kneeling_hours && std::isfinite(*usage.kneeling_hours)) {
    at(before, Factor::kneeling_hours) = hours_of_a_day(*usage.kneeling_hours);
  }
  if (usage.wear_hours && std::isfinite(*usage.wear_hours)) {
    at(before, Factor::wear_hours) = hours_of_a_day(*usage.wear_hours) - 12;
  }
  if (usage.sweating) {
    at(before, Factor::sweating_low) = *usage.sweating == Sweating::low ? 1 : 0;
    at(before, Factor::sweating_high) = *usage.sweating == Sweating::high ? 1 : 0;
  }
  if (usage.impact_sport) at(before, Factor::impact_sport) = *usage.impact_sport ? 1 : 0;
  return before;
}

double log_wear_rate(const FactorVector& factors, const FactorVector& beta) {
  return std::inner_product(factors.begin(), factors.end(), beta.begin(), 0.0);
}

}  // namespace sparewell::wear
