#include "supply/renewal.hpp"

#include <algorithm>
#include <cmath>

namespace sparewell::supply {
namespace {

constexpr double negligible = 1e-13;
// A chance of so many renewals that no order depends on it.
constexpr double unseen = 1e-9;
constexpr int least_cells = 256;
constexpr int most_cells = 4096;
// The midpoint sums below are made with this many cells and twice as many, and extrapolated.
constexpr int least_terms = 3;
constexpr int most_terms = 256;

double weibull_cdf(double t, double shape) {
  return -std::expm1(-std::pow(t, shape));
}

int cells_for(double horizon) {
  return std::clamp(static_cast<int>(std::ceil(horizon * least_cells)), least_cells, most_cells);
}

int terms_for(double chance_of_second, double horizon, double shape) {
  const double wanted = (6 + 3 * shape) * std::max(std::cbrt(chance_of_second), horizon / 2);
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

/// The unit's chance to be worn out at 0, 1/cells, 2/cells, ... of `wear`.
std::vector<double> chances_on_grid(const wear::UnitLife& life, double wear, int cells) {
  std::vector<double> chances;
  chances.reserve(static_cast<std::size_t>(cells) + 1);
  for (int i = 0; i <= cells; ++i) chances.push_back(life.chance_at_wear(wear * i / cells));
  return chances;
}

/// P(N >= 2), P(N >= 3), ...: the unit wears out in one cell of the grid, taken at its middle, and
/// the rest of the horizon sees one renewal less. Cells are `stride` steps of the grid `worn`.
std::vector<double> later_tails(const FreshCounts& counts, const std::vector<double>& worn,
                                std::size_t stride, double horizon) {
  std::vector<double> tails(static_cast<std::size_t>(counts.most()), 0.0);
  const auto steps = static_cast<double>(worn.size() - 1);
  for (std::size_t i = 0; i + stride < worn.size(); i += stride) {
    const double middle = static_cast<double>(i) + static_cast<double>(stride) / 2;
    counts.add_tails(horizon * (1 - middle / steps), worn[i + stride] - worn[i], tails);
  }
  return tails;
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

FreshCounts::FreshCounts(double shape, double horizon) {
  const int cells = cells_for(horizon);
  per_step_ = cells / horizon;
  std::vector<double> first;
  std::vector<double> middle;
  for (int i = 0; i <= cells; ++i) first.push_back(weibull_cdf(i / per_step_, shape));
  for (int i = 0; i < cells; ++i) middle.push_back(weibull_cdf((i + 0.5) / per_step_, shape));
  std::vector<std::vector<double>> tails{std::move(first)};
  while (tails.back().back() > negligible) tails.push_back(next_tail(tails.back(), middle));
  most_ = tails.size();
  for (std::size_t i = 0; i < middle.size() + 1; ++i) {
    for (const auto& tail : tails) tails_.push_back(tail[i]);
  }
}

double FreshCounts::at_least(int n, double t) const {
  if (n <= 0) return 1;
  if (n > most()) return 0;
  const Cell cell = cell_at(t);
  return between(cell, static_cast<std::size_t>(n) - 1);
}

FreshCounts::Cell FreshCounts::cell_at(double t) const {
  const std::size_t last = tails_.size() / most_ - 2;
  const double at = std::max(t * per_step_, 0.0);
  const auto cell = std::min(static_cast<std::size_t>(at), last);
  return {cell * most_, std::min(at - static_cast<double>(cell), 1.0)};
}

double FreshCounts::between(const Cell& cell, std::size_t column) const {
  const double left = tails_[cell.row + column];
  return left + cell.share * (tails_[cell.row + most_ + column] - left);
}

void FreshCounts::add_tails(double t, double weight, std::vector<double>& sums) const {
  const Cell cell = cell_at(t);
  for (std::size_t column = 0; column < most_; ++column) {
    const double chance = between(cell, column);
    if (chance < unseen) break;
    sums[column] += weight * chance;
  }
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
  const double first = life.chance_at_wear(wear);
  const double horizon = wear / life.person_scale_days();
  const double second_at_most = first * weibull_cdf(horizon, life.shape());
  if (second_at_most < unseen) return from_tails({first});

  const FreshCounts& counts = fresh.covering(life.shape(), horizon);
  const int terms = terms_for(second_at_most, horizon, life.shape());
  const auto worn = chances_on_grid(life, wear, 2 * terms);
  const auto coarse = later_tails(counts, worn, 2, horizon);
  std::vector<double> tails = later_tails(counts, worn, 1, horizon);
  // The error of a midpoint sum falls with the square of the step: Richardson's extrapolation.
  for (std::size_t n = 0; n < tails.size(); ++n) tails[n] += (tails[n] - coarse[n]) / 3;
  tails.insert(tails.begin(), first);
  return from_tails(tails);
}

}  // namespace sparewell::supply
