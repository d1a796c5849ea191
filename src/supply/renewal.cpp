#include "supply/renewal.hpp"

#include <algorithm>
#include <cmath>

namespace sparewell::supply {
namespace {

constexpr double negligible = 1e-13;
constexpr int least_cells = 256;
constexpr int most_cells = 4096;
// Wanted error of the chance of a second replacement; a midpoint sum over c cells errs by about
// 1/(4 c^2) of it.
constexpr double wanted_error = 1e-6;
constexpr int least_terms = 4;
constexpr int most_terms = 1024;

double weibull_cdf(double t, double shape) {
  return -std::expm1(-std::pow(t, shape));
}

int cells_for(double horizon) {
  return std::clamp(static_cast<int>(std::ceil(horizon * least_cells)), least_cells, most_cells);
}

int terms_for(double chance_of_second) {
  const double wanted = std::sqrt(chance_of_second / (4 * wanted_error));
  return std::clamp(static_cast<int>(std::ceil(wanted)), least_terms, most_terms);
}

/// One more renewal: the tail of n from the tail of n - 1.
std::vector<double> next_tail(const std::vector<double>& tail, const std::vector<double>& middle) {
  std::vector<double> next(tail.size(), 0.0);
  for (std::size_t j = 1; j < tail.size(); ++j) {
    const double step = tail[j] - tail[j - 1];
    if (step < 1e-18) continue;
    for (std::size_t i = j; i < tail.size(); ++i) next[i] += step * middle[i - j];
  }
  return next;
}

/// Turns tails P(N >= 1), P(N >= 2), ... into masses whose sum is 1 by construction.
Pmf from_tails(const std::vector<double>& tails) {
  std::vector<double> mass(tails.size() + 1);
  double before = 1;
  for (std::size_t n = 0; n < tails.size(); ++n) {
    const double tail = std::clamp(tails[n], 0.0, before);
    mass[n] = before - tail;
    before = tail;
  }
  mass.back() = before;
  return Pmf{std::move(mass)};
}

}  // namespace

FreshCounts::FreshCounts(double shape, double horizon) : horizon_{horizon} {
  const int cells = cells_for(horizon);
  step_ = horizon / cells;
  std::vector<double> first(static_cast<std::size_t>(cells) + 1);
  std::vector<double> middle(static_cast<std::size_t>(cells));
  for (int i = 0; i <= cells; ++i)
    first[static_cast<std::size_t>(i)] = weibull_cdf(i * step_, shape);
  for (int i = 0; i < cells; ++i) {
    middle[static_cast<std::size_t>(i)] = weibull_cdf((i + 0.5) * step_, shape);
  }
  tails_.push_back(std::move(first));
  while (tails_.back().back() > negligible) tails_.push_back(next_tail(tails_.back(), middle));
}

double FreshCounts::at_least(int n, double t) const {
  if (n <= 0) return 1;
  if (n > most()) return 0;
  const auto& tail = tails_[static_cast<std::size_t>(n) - 1];
  const double at = std::clamp(t / step_, 0.0, static_cast<double>(tail.size() - 1));
  const auto cell = std::min(static_cast<std::size_t>(at), tail.size() - 2);
  return tail[cell] + (at - static_cast<double>(cell)) * (tail[cell + 1] - tail[cell]);
}

double FreshCounts::mean(double t) const {
  double sum = 0;
  for (int n = 1; n <= most(); ++n) sum += at_least(n, t);
  return sum;
}

const FreshCounts& FreshCountsCache::covering(double shape, double horizon) {
  const int power = std::max(-10, static_cast<int>(std::ceil(std::log2(horizon))));
  const auto key = std::pair{shape, power};
  auto found = made_.find(key);
  if (found == made_.end()) {
    found = made_.emplace(key, FreshCounts{shape, std::exp2(power)}).first;
  }
  return found->second;
}

Pmf replacements(const wear::UnitLife& life, Date end, FreshCountsCache& fresh) {
  const double wear = life.wear_until(end);
  if (!(wear > 0)) return Pmf{};
  std::vector<double> tails{life.chance_at_wear(wear)};
  const double horizon = wear / life.scale_days();
  const double second_at_most = tails[0] * weibull_cdf(horizon, life.shape());
  if (second_at_most < negligible) return from_tails(tails);

  const FreshCounts& counts = fresh.covering(life.shape(), horizon);
  const int terms = terms_for(second_at_most);
  tails.resize(static_cast<std::size_t>(counts.most()) + 1, 0.0);
  double before = 0;
  for (int i = 0; i < terms; ++i) {
    const double now = life.chance_at_wear(wear * (i + 1) / terms);
    const double left = horizon * (1 - (i + 0.5) / terms);
    for (int n = 1; n <= counts.most(); ++n) {
      const double chance = counts.at_least(n, left);
      if (chance < negligible) break;
      tails[static_cast<std::size_t>(n)] += (now - before) * chance;
    }
    before = now;
  }
  return from_tails(tails);
}

}  // namespace sparewell::supply
