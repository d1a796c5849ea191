/// Random numbers whose sequence depends on the seed alone. The standard engine is the same
/// everywhere, the standard distributions are not, so they are written out here.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <random>
#include <span>
#include <vector>

namespace sparewell::sample {

class Random {
 public:
  /// Streams of one seed are independent of each other, so that one more patient does not change
  /// the others.
  Random(std::uint64_t seed, std::uint64_t stream);

  /// At least 0, below 1, from the top 53 bits.
  double uniform();
  double uniform(double least, double below) { return least + (below - least) * uniform(); }
  /// A whole number from `least` to `most`, both possible.
  int whole(int least, int most);
  bool chance(double p) { return uniform() < p; }
  /// Mean 0, standard deviation 1 (Marsaglia's polar method).
  double normal();
  /// Mean 1.
  double exponential();
  /// Mean `shape`, rate 1 (Marsaglia and Tsang's method, also for shapes below 1).
  double gamma(double shape);
  /// Survival exp(-hazard_multiplier * (x / scale)^shape).
  double weibull(double shape, double scale, double hazard_multiplier = 1.0);
  /// A position, drawn in proportion to the weights.
  std::size_t weighted(std::span<const double> weights);
  std::size_t weighted(std::initializer_list<double> weights) {
    return weighted(std::span{weights.begin(), weights.size()});
  }

  template <class List>
  const auto& pick(const List& list) {
    return list[static_cast<std::size_t>(whole(0, static_cast<int>(std::size(list)) - 1))];
  }

 private:
  std::mt19937_64 engine_;
};

}  // namespace sparewell::sample
