#include "random.hpp"

#include <cmath>

namespace sparewell::sample {
namespace {

/// SplitMix64's finaliser: spreads neighbouring seeds and streams over all 64 bits.
std::uint64_t mixed(std::uint64_t x) {
  x += 0x9E3779B97F4A7C15U;
  x = (x ^ (x >> 30U)) * 0xBF58476D1CE4E5B9U;
  x = (x ^ (x >> 27U)) * 0x94D049BB133111EBU;
  return x ^ (x >> 31U);
}

}  // namespace

Random::Random(std::uint64_t seed, std::uint64_t stream)
    : engine_{mixed(mixed(seed) ^ (stream * 0xD1342543DE82EF95U + 1U))} {}

double Random::uniform() {
  return static_cast<double>(engine_() >> 11U) * 0x1.0p-53;
}

int Random::whole(int least, int most) {
  const int span = most - least + 1;
  return least + static_cast<int>(uniform() * span);
}

double Random::normal() {
  while (true) {
    const double a = uniform(-1, 1);
    const double b = uniform(-1, 1);
    const double square = a * a + b * b;
    if (square > 0 && square < 1) return a * std::sqrt(-2 * std::log(square) / square);
  }
}

double Random::exponential() {
  return -std::log1p(-uniform());
}

double Random::gamma(double shape) {
  if (shape < 1) return gamma(shape + 1) * std::pow(1 - uniform(), 1 / shape);
  const double d = shape - 1.0 / 3.0;
  const double c = 1 / std::sqrt(9 * d);
  while (true) {
    const double x = normal();
    const double root = 1 + c * x;
    if (root <= 0) continue;
    const double v = root * root * root;
    if (std::log1p(-uniform()) < 0.5 * x * x + d - d * v + d * std::log(v)) return d * v;
  }
}

double Random::weibull(double shape, double scale, double hazard_multiplier) {
  return scale * std::pow(exponential() / hazard_multiplier, 1 / shape);
}

std::size_t Random::weighted(std::span<const double> weights) {
  double total = 0;
  for (const double weight : weights) total += weight;
  double left = uniform() * total;
  for (std::size_t i = 0; i + 1 < weights.size(); ++i) {
    left -= weights[i];
    if (left < 0) return i;
  }
  return weights.size() - 1;
}

}  // namespace sparewell::sample
