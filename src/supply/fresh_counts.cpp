#include "supply/fresh_counts.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <complex>

#include <unsupported/Eigen/FFT>

namespace sparewell::supply {
namespace {

constexpr double negligible = 1e-13;
// A chance of so many renewals that no order depends on it.
constexpr double unseen = 1e-9;
constexpr int least_cells = 256;
constexpr int most_cells = 4096;
// Losses expected within a horizon for which counts are made are whole multiples of this.
constexpr double loss_step = 0.05;
constexpr int least_power = -40;

int cells_for(double horizon) {
  return std::clamp(static_cast<int>(std::ceil(horizon * least_cells)), least_cells, most_cells);
}

/// One more renewal: the tail of n from the tail of n - 1, a convolution of its steps with the
/// chances to have ended by the middle of each cell. By the fast Fourier transform, which is the
/// quicker way from a few hundred cells on; its rounding is far below what is negligible.
class NextTail {
 public:
  explicit NextTail(const std::vector<double>& middle) : length_{2 * std::bit_ceil(middle.size())} {
    transformed_.resize(length_);
    std::vector<double> padded = middle;
    padded.resize(length_, 0.0);
    fft_.fwd(transformed_, padded);
  }

  [[nodiscard]] std::vector<double> after(const std::vector<double>& tail) {
    std::vector<double> steps(length_, 0.0);
    for (std::size_t j = 1; j < tail.size(); ++j) steps[j - 1] = tail[j] - tail[j - 1];
    std::vector<std::complex<double>> product;
    fft_.fwd(product, steps);
    product.resize(length_);
    for (std::size_t i = 0; i < length_; ++i) product[i] *= transformed_[i];
    fft_.inv(steps, product);
    std::vector<double> next(tail.size(), 0.0);
    for (std::size_t i = 1; i < tail.size(); ++i) next[i] = std::max(steps[i - 1], next[i - 1]);
    return next;
  }

 private:
  std::size_t length_;
  std::vector<std::complex<double>> transformed_;
  Eigen::FFT<double> fft_;
};

}  // namespace

FreshCounts::FreshCounts(double shape, double horizon, double loss_rate) {
  const int cells = cells_for(horizon);
  per_step_ = cells / horizon;
  const auto ended = [&](double steps) {
    const double t = steps / per_step_;
    return -std::expm1(-std::pow(t, shape) - loss_rate * t);
  };
  std::vector<double> first;
  std::vector<double> middle;
  for (int i = 0; i <= cells; ++i) first.push_back(ended(i));
  for (int i = 0; i < cells; ++i) middle.push_back(ended(i + 0.5));
  std::vector<std::vector<double>> tails{std::move(first)};
  NextTail next{middle};
  while (tails.back().back() > negligible) tails.push_back(next.after(tails.back()));
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
  const auto left = std::min(static_cast<std::size_t>(at), last);
  return {left, std::min(at - static_cast<double>(left), 1.0)};
}

double FreshCounts::between(const Cell& cell, std::size_t column) const {
  if (column >= most_) return 0;
  const double* left = &tails_[cell.left * most_ + column];
  return *left + cell.share * (left[most_] - *left);
}

double FreshCounts::mean(double t) const {
  double sum = 0;
  for (int n = 1; n <= most(); ++n) sum += at_least(n, t);
  return sum;
}

FreshTails::FreshTails(std::vector<Part> parts) : parts_{std::move(parts)} {
  for (const Part& part : parts_) most_ = std::max(most_, part.counts->most_);
}

void FreshTails::add_tails(double t, double weight, std::vector<double>& sums) const {
  // The same horizon has the same grid, whatever the rate.
  const FreshCounts::Cell cell = parts_.front().counts->cell_at(t);
  for (std::size_t column = 0; column < most_; ++column) {
    double chance = 0;
    for (const Part& part : parts_) chance += part.weight * part.counts->between(cell, column);
    if (chance < unseen) break;
    sums[column] += weight * chance;
  }
}

FreshTails FreshCountsCache::covering(double shape, double horizon, double loss_rate) {
  const int power = std::max(least_power, static_cast<int>(std::ceil(std::log2(horizon))));
  const double steps = loss_rate * std::exp2(power) / loss_step;
  if (!(steps > 0)) return FreshTails{{{&made(shape, power, 0), 1}}};
  const int from = 2 * static_cast<int>(steps / 2);
  const double x = steps - from;  // from 0 to 2: Lagrange's parabola through 0, 1 and 2
  return FreshTails{{{&made(shape, power, from), (1 - x) * (2 - x) / 2},
                     {&made(shape, power, from + 1), x * (2 - x)},
                     {&made(shape, power, from + 2), x * (x - 1) / 2}}};
}

const FreshCounts& FreshCountsCache::made(double shape, int power, int losses) {
  Entry* entry = nullptr;
  {
    const std::lock_guard lock{guard_};
    entry = &made_[{shape, power, losses}];
  }
  std::call_once(entry->made, [&] {
    const double horizon = std::exp2(power);
    entry->counts.emplace(shape, horizon, losses * loss_step / horizon);
  });
  return *entry->counts;
}

}  // namespace sparewell::supply
