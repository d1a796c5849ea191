#include "truth.hpp"

#include <cmath>

namespace sparewell::sample {
namespace {

/// Log wear rate for one more of each factor.
struct Beta {
  double activity;
  double kneeling;
  double wear_hours;
  double sweating_low;
  double sweating_high;
  double sport;
};

Beta beta_of(Kind kind) {
  switch (kind) {
    case Kind::liner:
      return {0.12, 0.08, 0.04, -0.05, 0.18, 0.25};
    case Kind::sleeve:
      return {0.15, 0.30, 0.04, 0.00, 0.10, 0.30};
    case Kind::lock:
      return {0.10, 0.02, 0.02, 0.00, 0.08, 0.20};
    case Kind::pin:
      return {0.12, 0.04, 0.02, 0.00, 0.05, 0.25};
    case Kind::valve:
      return {0.05, 0.02, 0.03, 0.00, 0.15, 0.10};
    case Kind::pump:
      return {0.06, 0.02, 0.04, 0.00, 0.20, 0.15};
    case Kind::sock:
      return {0.10, 0.06, 0.05, -0.05, 0.15, 0.20};
  }
  return {};
}

double liner_scale(Material material) {
  if (material == Material::mineral_oil_gel) return 370;
  return material == Material::urethane ? 490 : 430;
}

double sleeve_scale(Material material) {
  if (material == Material::neoprene) return 230;
  return material == Material::silicone ? 285 : 250;
}

}  // namespace

Law law_of(Kind kind, Material material) {
  switch (kind) {
    case Kind::liner:
      return {2.3, liner_scale(material), 0.25};
    case Kind::sleeve:
      return {1.9, sleeve_scale(material), 0.25};
    case Kind::lock:
      return {1.8, 1600, 0.15};
    case Kind::pin:
      return {1.6, 800, 0.20};
    case Kind::valve:
      return {1.5, material == Material::metal ? 620.0 : 430.0, 0.20};
    case Kind::pump:
      return {1.4, 1400, 0.15};
    case Kind::sock:
      return {2.5, 110, 0.20};
  }
  return {1, 1, 0};
}

double wear_rate(Kind kind, const Usage& usage) {
  const Beta beta = beta_of(kind);
  double sum = 0;
  if (usage.activity) sum += beta.activity * (static_cast<int>(*usage.activity) - 2);
  sum += beta.kneeling * usage.kneeling_hours.value_or(0);
  sum += beta.wear_hours * (usage.wear_hours.value_or(12) - 12);
  if (usage.sweating == Sweating::low) sum += beta.sweating_low;
  if (usage.sweating == Sweating::high) sum += beta.sweating_high;
  if (usage.impact_sport.value_or(false)) sum += beta.sport;
  return std::exp(sum);
}

EndReason wear_reason(Kind kind, Random& random) {
  // hole, tear, stretched, delaminated, lost grip, leak, worn: the order of EndReason
  static constexpr std::array<std::array<double, 7>, 7> weights{{{30, 35, 14, 10, 1, 0, 10},
                                                                 {45, 28, 14, 0, 2, 11, 0},
                                                                 {0, 0, 0, 0, 70, 0, 30},
                                                                 {0, 0, 0, 0, 20, 0, 80},
                                                                 {0, 0, 0, 0, 0, 95, 5},
                                                                 {0, 0, 0, 0, 0, 50, 50},
                                                                 {60, 0, 10, 0, 0, 0, 30}}};
  return static_cast<EndReason>(random.weighted(weights[static_cast<std::size_t>(kind)]));
}

}  // namespace sparewell::sample
