#include "supply/pmf.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>
#include <utility>

namespace sparewell::supply {
namespace {

using Masses = std::vector<double>;

// A trailing mass below this cannot change a decision; it is added to the last one kept.
constexpr double trailing = 1e-15;
// Products with a smaller factor vanish beside the rounding of the sum.
constexpr double nothing = 1e-40;
// A sum of doubles that should be p may fall short of it by this much.
constexpr double rounding = 1e-12;

void trim(Masses& mass) {
  double dropped = 0;
  while (mass.size() > 1 && mass.back() < trailing) {
    dropped += mass.back();
    mass.pop_back();
  }
  mass.back() += dropped;
}

Masses convolved(const Masses& a, const Masses& b) {
  Masses sum(a.size() + b.size() - 1, 0.0);
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i] < nothing) continue;
    for (std::size_t j = 0; j < b.size(); ++j) sum[i + j] += a[i] * b[j];
  }
  trim(sum);
  return sum;
}

}  // namespace

Pmf::Pmf(std::vector<double> mass) : mass_{std::move(mass)} {
  double total = 0;
  for (const double m : mass_) {
    if (!(m >= 0)) throw std::invalid_argument("a probability is negative or not a number");
    total += m;
  }
  if (!(std::abs(total - 1) <= 1e-9)) {
    throw std::invalid_argument("the probabilities of a count do not sum to 1");
  }
  for (double& m : mass_) m /= total;
  trim(mass_);
}

double Pmf::mean() const {
  double sum = 0;
  for (std::size_t n = 1; n < mass_.size(); ++n) sum += static_cast<double>(n) * mass_[n];
  return sum;
}

double Pmf::at_most(int n) const {
  if (n < 0) return 0;
  const auto count = static_cast<std::size_t>(n) + 1;
  if (count >= mass_.size()) return 1;
  return std::accumulate(mass_.begin(), mass_.begin() + static_cast<std::ptrdiff_t>(count), 0.0);
}

double Pmf::more_than(int n) const {
  if (n < 0) return 1;
  const auto count = static_cast<std::size_t>(n) + 1;
  double sum = 0;
  // From the far end, so that small tails keep their digits.
  for (std::size_t i = mass_.size(); i > count; --i) sum += mass_[i - 1];
  return sum;
}

int Pmf::least_covering(double p) const {
  if (!(p > 0 && p < 1)) throw std::invalid_argument("a service target lies between 0 and 1");
  double sum = 0;
  for (std::size_t n = 0; n < mass_.size(); ++n) {
    sum += mass_[n];
    if (sum >= p - rounding) return static_cast<int>(n);
  }
  return static_cast<int>(mass_.size()) - 1;
}

Pmf binomial(int trials, double chance) {
  const double none = trials * std::log1p(-chance);
  // Beyond that the chance of none underflows, and with it all that is made from it.
  if (none < -600 && trials > 1) {
    return convolve(binomial(trials / 2, chance), binomial(trials - trials / 2, chance));
  }
  if (!(chance < 1)) return Pmf{{0.0, 1.0}};
  Masses mass{std::exp(none)};
  double left = 1 - mass[0];
  for (int n = 1; n <= trials && (left > trailing || mass.back() > trailing); ++n) {
    mass.push_back(mass.back() * (trials - n + 1) / n * chance / (1 - chance));
    left -= mass.back();
  }
  return Pmf{std::move(mass)};
}

Pmf times(int each, const Pmf& pmf) {
  const auto step = static_cast<std::size_t>(each);
  std::vector<double> mass((pmf.mass().size() - 1) * step + 1, 0.0);
  for (std::size_t n = 0; n < pmf.mass().size(); ++n) mass[n * step] = pmf.mass()[n];
  return Pmf{std::move(mass)};
}

Pmf convolve(const Pmf& a, const Pmf& b) {
  return Pmf{convolved(a.mass(), b.mass())};
}

Pmf convolve_all(std::vector<Pmf> parts) {
  if (parts.empty()) return Pmf{};
  std::vector<Masses> sums;
  sums.reserve(parts.size());
  for (Pmf& part : parts) sums.push_back(std::move(part).mass());
  // Halving pairs parts of like length, which costs far less than adding them one by one.
  while (sums.size() > 1) {
    const std::size_t half = (sums.size() + 1) / 2;
    for (std::size_t i = 0; i + half < sums.size(); ++i) {
      sums[i] = convolved(sums[i], sums[i + half]);
    }
    sums.resize(half);
  }
  return Pmf{std::move(sums.front())};
}

void CountSum::add(std::span<const double> tails) {
  mass_.clear();
  double before = 1;
  for (const double tail : tails) {
    const double now = std::clamp(tail, 0.0, before);
    mass_.push_back(before - now);
    before = now;
  }
  mass_.push_back(before);
  trim(mass_);
  // In place from the far end, where nothing is read any more.
  const std::size_t old = block_.size();
  block_.resize(old + mass_.size() - 1, 0.0);
  for (std::size_t n = block_.size(); n-- > 0;) {
    double sum = 0;
    const std::size_t most = std::min(n, mass_.size() - 1);
    for (std::size_t taken = n < old ? 0 : n - old + 1; taken <= most; ++taken) {
      sum += mass_[taken] * block_[n - taken];
    }
    block_[n] = sum;
  }
  trim(block_);
  constexpr int counts_in_block = 64;
  if (++in_block_ == counts_in_block) end_block();
}

void CountSum::end_block() {
  if (in_block_ == 0) return;
  parts_.emplace_back(std::move(block_));
  block_.assign(1, 1.0);
  in_block_ = 0;
}

Pmf CountSum::sum() && {
  end_block();
  return convolve_all(std::move(parts_));
}

Pmf mix(const std::vector<double>& weights, const std::vector<Pmf>& parts) {
  if (weights.size() != parts.size() || parts.empty()) {
    throw std::invalid_argument("a mixture needs one weight for each part");
  }
  std::size_t longest = 0;
  for (const Pmf& part : parts) longest = std::max(longest, part.mass().size());
  Masses mass(longest, 0.0);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Masses& part = parts[i].mass();
    for (std::size_t n = 0; n < part.size(); ++n) mass[n] += weights[i] * part[n];
  }
  return Pmf{std::move(mass)};
}

}  // namespace sparewell::supply
