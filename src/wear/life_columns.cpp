#include "wear/life_columns.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace sparewell::wear {

void LifeColumns::reserve(std::size_t lives) {
  for (auto* column : {&spans_of_, &scale_, &group_}) column->reserve(lives);
  for (auto* column : {&worn_out_, &sign_, &log_days_}) column->reserve(lives);
  for (auto& column : factors_) column.reserve(lives);
}

void LifeColumns::add(const LifeFacts& life, std::span<const double> log_days,
                      std::span<const double> factors) {
  spans_of_.push_back(std::ssize(log_days));
  scale_.push_back(life.scale);
  group_.push_back(life.group);
  worn_out_.push_back(life.worn_out);
  sign_.push_back(life.sign);
  log_days_.insert(log_days_.end(), log_days.begin(), log_days.end());
  for (std::size_t i = 0; i < factors.size(); ++i) {
    factors_[i % factors_.size()].push_back(factors[i]);
  }
}

namespace {

/// Logs of the sums over the spans of each life, whose logs `part` holds; then makes these the
/// parts of the sum. The largest is taken out of each sum, so that nothing overflows.
Eigen::ArrayXd add_up_spans(const LifeColumns& lives, Eigen::ArrayXd& part) {
  Eigen::ArrayXd log_sum(lives.lives());
  double* first = part.data();
  double* log_of_life = log_sum.data();
  for (const Eigen::Index spans : lives.spans_of()) {
    double* const end = first + spans;
    const double largest = *std::max_element(first, end);
    for (; first != end; ++first) *first -= largest;
    *log_of_life++ = largest;
  }
  part = part.exp();
  first = part.data();
  log_of_life = log_sum.data();
  for (const Eigen::Index spans : lives.spans_of()) {
    double* const end = first + spans;
    if (spans > 1) {
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

LifeAges life_ages(const LifeColumns& lives, double shape, const Eigen::VectorXd& log_scales,
                   const Eigen::VectorXd& beta) {
  LifeAges ages;
  Eigen::ArrayXd log_age = lives.log_days();
  for (Eigen::Index f = 0; f < lives.factors(); ++f) log_age += beta[f] * lives.factor(f);
  if (!lives.has_one_span_a_life()) {
    ages.part = std::move(log_age);
    log_age = add_up_spans(lives, ages.part);
  }
  ages.of_endings = -(lives.worn_out() * log_age).sum();
  ages.h = std::move(log_age);
  for (Eigen::Index i = 0; i < lives.lives(); ++i) {
    ages.h[i] = shape * (ages.h[i] - log_scales[lives.scale()[static_cast<std::size_t>(i)]]);
  }
  ages.of_endings += (lives.worn_out() * ages.h).sum();
  ages.hazard = lives.sign() * ages.h.exp();
  return ages;
}

}  // namespace sparewell::wear
