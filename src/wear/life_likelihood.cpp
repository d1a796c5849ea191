#include "wear/life_likelihood.hpp"

#include <algorithm>
#include <cmath>

#include "wear/life_sums.hpp"

namespace sparewell::wear {

LifeLikelihood::LifeLikelihood(std::size_t scale_count, std::size_t factor_count, Grouping grouping)
    : scales_{static_cast<Eigen::Index>(scale_count)},
      factors_{static_cast<Eigen::Index>(factor_count)},
      grouping_{grouping},
      lives_{factors_},
      factors_at_wear_endings_{Eigen::VectorXd::Zero(factors_)} {}

void LifeLikelihood::add(const ObservedLife& life) {
  const std::size_t group = is_shared() ? life.group : 0;
  LifeFacts facts{static_cast<Eigen::Index>(life.scale), static_cast<Eigen::Index>(group),
                  life.worn_out ? 1.0 : 0.0, 1};
  lives_.add(facts, life.log_days, life.factors);
  if (!life.entry_log_days.empty()) {
    facts.worn_out = 0;
    facts.sign = -1;
    lives_.add(facts, life.entry_log_days, life.entry_factors);
  }
  if (group >= group_endings_.size()) group_endings_.resize(group + 1, 0);
  ++observed_;
  if (!life.worn_out) return;
  ++wear_endings_;
  if (is_shared()) ending_counts_.add(group_endings_[group]);
  ++group_endings_[group];
  for (Eigen::Index i = 0; i < factors_; ++i) {
    factors_at_wear_endings_[i] += life.at_end[static_cast<std::size_t>(i)];
  }
}

double LifeLikelihood::theta_of_groups(const Eigen::VectorXd& theta) const {
  return is_shared() ? std::exp(theta[theta.size() - 1]) : 0;
}

LifeAges LifeLikelihood::ages(const Eigen::VectorXd& theta) const {
  return life_ages(lives_, std::exp(theta[0]), theta.segment(1, scales_),
                   theta.segment(1 + scales_, factors_));
}

/// Without grouping all lives are one group of variance 0, which adds -H.
std::vector<MultiplierTerms> LifeLikelihood::group_terms(const LifeAges& ages,
                                                         const Eigen::VectorXd& theta) const {
  std::vector<double> hazards(group_endings_.size(), 0.0);
  if (hazards.size() == 1) {
    hazards[0] = ages.hazard.sum();
  } else {
    for (Eigen::Index i = 0; i < lives_.lives(); ++i) {
      hazards[static_cast<std::size_t>(lives_.group()[static_cast<std::size_t>(i)])] +=
          ages.hazard[i];
    }
  }
  const double variance = theta_of_groups(theta);
  std::vector<MultiplierTerms> terms;
  terms.reserve(hazards.size());
  for (std::size_t g = 0; g < hazards.size(); ++g) {
    // What is left after the part before entry can only fall below 0 by rounding.
    const double hazard = hazards[g] < 0 ? 0 : hazards[g];
    terms.push_back(multiplier_terms(static_cast<double>(group_endings_[g]), hazard, variance));
  }
  return terms;
}

/// All but what is added by the groups.
double LifeLikelihood::value_of_endings(const LifeAges& ages, const Eigen::VectorXd& theta) const {
  return ages.of_endings + static_cast<double>(wear_endings_) * theta[0] +
         factors_at_wear_endings_.dot(theta.segment(1 + scales_, factors_));
}

double LifeLikelihood::value(const Eigen::VectorXd& theta) const {
  const LifeAges now = ages(theta);
  double sum = value_of_endings(now, theta);
  for (const MultiplierTerms& group : group_terms(now, theta)) sum += group.value;
  return sum + ending_counts_.terms(theta_of_groups(theta)).value;
}

/// What the groups add beyond their lives with fixed weights: how the weights move.
void LifeLikelihood::add_groups(const std::vector<MultiplierTerms>& groups, double variance,
                                Eigen::MatrixXd& group_gradients, Derivatives& sum) const {
  const Eigen::Index last = parameters() - 1;
  const EndingCounts::Terms counts = ending_counts_.terms(variance);
  sum.value += counts.value;
  sum.gradient[last] += counts.by_log_theta;
  sum.hessian(last, last) += counts.by_log_theta_twice;
  Eigen::VectorXd by_both(last);
  by_both.setZero();
  for (std::size_t g = 0; g < groups.size(); ++g) {
    const MultiplierTerms& group = groups[g];
    auto gradient = group_gradients.col(static_cast<Eigen::Index>(g));
    sum.gradient[last] += group.by_log_theta;
    sum.hessian(last, last) += group.by_log_theta_twice;
    by_both += group.by_both * gradient;
    gradient *= std::sqrt(group.by_hazard_twice);
  }
  sum.hessian.row(last).head(last) = by_both;
  sum.hessian.topLeftCorner(last, last).selfadjointView<Eigen::Lower>().rankUpdate(group_gradients);
}

Derivatives LifeLikelihood::derivatives(const Eigen::VectorXd& theta) const {
  const LifeAges now = ages(theta);
  const auto groups = group_terms(now, theta);
  Eigen::ArrayXd weights(static_cast<Eigen::Index>(groups.size()));
  std::ranges::transform(groups, weights.begin(), &MultiplierTerms::mean);
  LifeSums sums = life_sums(lives_, now, std::exp(theta[0]), scales_, weights, is_shared());

  Derivatives sum{value_of_endings(now, theta), Eigen::VectorXd::Zero(parameters()),
                  Eigen::MatrixXd::Zero(parameters(), parameters())};
  for (const MultiplierTerms& group : groups) sum.value += group.value;
  const Eigen::Index inner = sums.gradient.size();
  sum.gradient.head(inner) = sums.gradient;
  sum.gradient.segment(1 + scales_, factors_) += factors_at_wear_endings_;
  sum.hessian.topLeftCorner(inner, inner) = sums.hessian;
  if (is_shared()) add_groups(groups, theta_of_groups(theta), sums.group_gradients, sum);
  sum.hessian = sum.hessian.selfadjointView<Eigen::Lower>().toDenseMatrix();
  return sum;
}

Eigen::VectorXd LifeLikelihood::start_near(const Eigen::VectorXd& theta) const {
  const LifeAges now = ages(theta);
  // Logs of sums over the lives of each scale, 1 for the ending at the scale among them; the
  // largest is taken out of each sum, so that nothing overflows.
  Eigen::VectorXd largest = Eigen::VectorXd::Zero(scales_);
  const auto each_life = [&](const auto& use) {
    for (Eigen::Index i = 0; i < lives_.lives(); ++i) {
      if (lives_.sign()[i] > 0) use(i, lives_.scale()[static_cast<std::size_t>(i)]);
    }
  };
  each_life([&](auto i, auto scale) { largest[scale] = std::max(largest[scale], now.h[i]); });
  Eigen::VectorXd sums = (-largest.array()).exp();
  Eigen::VectorXd endings = Eigen::VectorXd::Ones(scales_);
  each_life([&](auto i, auto scale) {
    sums[scale] += std::exp(now.h[i] - largest[scale]);
    endings[scale] += lives_.worn_out()[i];
  });
  Eigen::VectorXd start = theta;
  start.segment(1, scales_).array() +=
      (largest.array() + (sums.array() / endings.array()).log()) / std::exp(theta[0]);
  return start;
}

}  // namespace sparewell::wear
