#include "wear/effects.hpp"

#include <cmath>

#include "wear/kind_prior.hpp"

namespace sparewell::wear {
namespace {

constexpr double normal_90_percent = 1.2815515655446004;  // leaves a tenth on either side

}  // namespace

double telling_amount(Factor factor) {
  switch (factor) {
    case Factor::kneeling_hours:
      return 2;
    case Factor::wear_hours:
      return 4;
    case Factor::activity:
    case Factor::sweating_low:
    case Factor::sweating_high:
    case Factor::impact_sport:
      break;
  }
  return 1;
}

std::vector<FactorEffect> factor_effects(const KindLife& life, const PriorTable& priors) {
  const KindPrior prior = kind_prior(priors, life.kind, {});
  const std::size_t before_beta = 1 + life.scale.size();
  std::vector<FactorEffect> effects;
  for (std::size_t f = 0; f < factor_count; ++f) {
    const auto factor = static_cast<Factor>(f);
    const double amount = telling_amount(factor);
    const auto at = static_cast<Eigen::Index>(before_beta + f);
    const double log_ratio = -life.beta[f] * amount;
    const double reach = normal_90_percent * std::sqrt(life.covariance(at, at)) * amount;
    effects.push_back({factor, amount, std::exp(log_ratio), std::exp(log_ratio - reach),
                       std::exp(log_ratio + reach), std::exp(-prior.beta[f].mean * amount)});
  }
  return effects;
}

double median_days(const KindLife& life, Material material) {
  return scale_days(life, material) * std::pow(std::log(2.0), 1 / life.shape);
}

}  // namespace sparewell::wear
