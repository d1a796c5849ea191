#include "wear/life_columns.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace sparewell::wear {
namespace {

/// So many that a step is worth setting up, so few that its numbers stay in the fastest memory.
constexpr Eigen::Index lives_a_block = 256;

/// Logs of the sums over the spans of each life, whose logs `part` holds; then makes these the
/// parts of the sum. The largest is taken out of each sum, so that nothing overflows.
Eigen::ArrayXd add_up_spans(std::span<const LifeFacts> lives, Eigen::ArrayXd& part) {
  Eigen::ArrayXd log_sum(std::ssize(lives));
  double* first = part.data();
  double* log_of_life = log_sum.data();
  for (const LifeFacts& life : lives) {
    double* const end = first + life.spans;
    const double largest = *std::max_element(first, end);
    for (; first != end; ++first) *first -= largest;
    *log_of_life++ = largest;
  }
  part = part.exp();
  first = part.data();
  log_of_life = log_sum.data();
  for (const LifeFacts& life : lives) {
    double* const end = first + life.spans;
    if (life.spans > 1) {
      const double sum = std::accumulate(first, end, 0.0);
      *log_of_life += std::log(sum);
      for (double* each = first; each != end; ++each) *each /= sum;
    }
    first = end;
    ++log_of_life;
  }
  return log_sum;
}

}  // namespace

void LifeColumns::reserve(std::size_t lives) {
  lives_.reserve(lives);
  log_days_.reserve(lives);
  for (auto& column : factors_) column.reserve(lives);
}

void LifeColumns::add(LifeFacts life, std::span<const double> log_days,
                      std::span<const double> factors) {
  if (blocks_.empty() || blocks_.back().lives == lives_a_block) {
    blocks_.push_back({std::ssize(lives_), 0, std::ssize(log_days_), 0});
  }
  ++blocks_.back().lives;
  blocks_.back().spans += std::ssize(log_days);
  life.spans = static_cast<std::int32_t>(log_days.size());
  lives_.push_back(life);
  log_days_.insert(log_days_.end(), log_days.begin(), log_days.end());
  for (std::size_t s = 0; s < log_days.size(); ++s) {
    for (std::size_t f = 0; f < factors_.size(); ++f) {
      factors_[f].push_back(factors[s * factors_.size() + f]);
    }
  }
}

std::span<const LifeFacts> LifeColumns::lives(const LifeBlock& block) const {
  return std::span{lives_}.subspan(static_cast<std::size_t>(block.first),
                                   static_cast<std::size_t>(block.lives));
}

LifeColumns::Column LifeColumns::log_days(const LifeBlock& block) const {
  return {log_days_.data() + block.first_span, block.spans};
}

LifeColumns::Column LifeColumns::factor(const LifeBlock& block, Eigen::Index number) const {
  return {factors_[static_cast<std::size_t>(number)].data() + block.first_span, block.spans};
}

LifeAges life_ages(const LifeColumns& columns, const LifeBlock& block, double shape,
                   const Eigen::Ref<const Eigen::VectorXd>& log_scales,
                   const Eigen::Ref<const Eigen::VectorXd>& beta) {
  LifeAges ages;
  Eigen::ArrayXd log_age = columns.log_days(block);
  for (Eigen::Index f = 0; f < columns.factors(); ++f)
    log_age += beta[f] * columns.factor(block, f);
  const auto lives = columns.lives(block);
  if (!block.has_one_span_a_life()) {
    ages.part = std::move(log_age);
    log_age = add_up_spans(lives, ages.part);
  }
  ages.h.resize(block.lives);
  ages.hazard.resize(block.lives);
  Eigen::ArrayXd endings(block.lives);
  Eigen::ArrayXd sign(block.lives);
  Eigen::Index i = 0;
  for (const LifeFacts& life : lives) {
    ages.h[i] = log_age[i] - log_scales[life.scale];
    endings[i] = life.endings;
    sign[i] = life.sign;
    ++i;
  }
  ages.h *= shape;
  // Not with the exp of Eigen, which stops at the largest number instead of going to infinity.
  for (i = 0; i < block.lives; ++i) ages.hazard[i] = sign[i] * std::exp(ages.h[i]);
  ages.of_endings = (endings * (ages.h - log_age)).sum();
  return ages;
}

}  // namespace sparewell::wear
