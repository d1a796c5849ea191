#include "wear/life_likelihood.hpp"

#include <algorithm>
#include <cmath>

namespace sparewell::wear {
namespace {

/// log(exp(a) + exp(b)) without overflow.
double log_add(double a, double b) {
  const double larger = std::max(a, b);
  return larger + std::log1p(std::exp(std::min(a, b) - larger));
}

}  // namespace

LifeLikelihood::LifeLikelihood(std::size_t scales, std::size_t factors, Grouping grouping)
    : scales_{static_cast<Eigen::Index>(scales)},
      factors_{static_cast<Eigen::Index>(factors)},
      grouping_{grouping},
      lives_{factors_},
      factors_at_wear_endings_{Eigen::VectorXd::Zero(factors_)} {}

void LifeLikelihood::add(const ObservedLife& life) {
  const std::size_t group = is_shared() ? life.group : 0;
  LifeFacts facts;
  facts.scale = static_cast<std::int32_t>(life.scale);
  facts.group = static_cast<std::int32_t>(group);
  if (!life.entry_log_days.empty()) {
    facts.sign = -1;
    lives_.add(facts, life.entry_log_days, life.entry_factors);
    facts.sign = 1;
  }
  facts.endings = life.worn_out ? 1 : 0;
  lives_.add(facts, life.log_days, life.factors);
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

LifeAges LifeLikelihood::ages(const LifeBlock& block, const Eigen::VectorXd& theta) const {
  return life_ages(lives_, block, std::exp(theta[0]), theta.segment(1, scales_),
                   theta.segment(1 + scales_, factors_));
}

/// What the value is made of, one block after another.
struct LifeLikelihood::Totals {
  explicit Totals(std::size_t groups)
      : hazards{Eigen::ArrayXd::Zero(static_cast<Eigen::Index>(groups))} {}

  void add(std::span<const LifeFacts> lives, const LifeAges& ages) {
    of_endings += ages.of_endings;
    if (hazards.size() == 1) {
      hazards[0] += ages.hazard.sum();
      return;
    }
    Eigen::Index i = 0;
    for (const LifeFacts& life : lives) hazards[life.group] += ages.hazard[i++];
  }

  /// What is left of a group after the parts before entry can only fall below 0 by rounding.
  void end() { hazards = hazards.max(0.0); }

  double of_endings = 0;
  Eigen::ArrayXd hazards;  ///< summed over the lives of each group
};

/// Without grouping all lives are one group of variance 0, which adds -H.
std::vector<MultiplierTerms> LifeLikelihood::group_terms(const Totals& totals,
                                                         const Eigen::VectorXd& theta) const {
  const double variance = theta_of_groups(theta);
  std::vector<MultiplierTerms> terms;
  terms.reserve(groups());
  for (std::size_t g = 0; g < groups(); ++g) {
    terms.push_back(multiplier_terms(static_cast<double>(group_endings_[g]),
                                     totals.hazards[static_cast<Eigen::Index>(g)], variance));
  }
  return terms;
}

double LifeLikelihood::value_of(const Totals& totals, const std::vector<MultiplierTerms>& groups,
                                const Eigen::VectorXd& theta) const {
  double sum = totals.of_endings + static_cast<double>(wear_endings_) * theta[0] +
               factors_at_wear_endings_.dot(theta.segment(1 + scales_, factors_));
  for (const MultiplierTerms& group : groups) sum += group.value;
  return sum + ending_counts_.terms(theta_of_groups(theta)).value;
}

double LifeLikelihood::value(const Eigen::VectorXd& theta) const {
  Totals totals{groups()};
  for (const LifeBlock& block : lives_.blocks()) {
    totals.add(lives_.lives(block), ages(block, theta));
  }
  totals.end();
  return value_of(totals, group_terms(totals, theta), theta);
}

namespace {

/// Adds `weight` times the gradient times its transpose to the lower triangle.
void add_outer_square(const SparseGradient& gradient, double weight, Eigen::MatrixXd& lower) {
  const auto& entries = gradient.entries;
  for (std::size_t j = 0; j < entries.size(); ++j) {
    const double factor = weight * entries[j].value;
    for (std::size_t i = j; i < entries.size(); ++i) {
      const auto [column, row] = std::minmax(entries[j].parameter, entries[i].parameter);
      lower(row, column) += factor * entries[i].value;
    }
  }
}

}  // namespace

/// What the groups add beyond their lives with fixed weights: how the weights move.
void LifeLikelihood::add_groups(const std::vector<MultiplierTerms>& groups,
                                const std::vector<SparseGradient>& group_gradients,
                                const Eigen::VectorXd& theta, Derivatives& sum) const {
  const Eigen::Index last = parameters() - 1;
  const EndingCounts::Terms counts = ending_counts_.terms(theta_of_groups(theta));
  sum.gradient[last] = counts.by_log_theta;
  sum.hessian(last, last) = counts.by_log_theta_twice;
  Eigen::VectorXd with_theta = Eigen::VectorXd::Zero(last);
  for (std::size_t g = 0; g < groups.size(); ++g) {
    const MultiplierTerms& group = groups[g];
    sum.gradient[last] += group.by_log_theta;
    sum.hessian(last, last) += group.by_log_theta_twice;
    for (const auto& [parameter, value] : group_gradients[g].entries) {
      with_theta[parameter] += group.hazard_and_log_theta * value;
    }
    add_outer_square(group_gradients[g], group.hazard_twice, sum.hessian);
  }
  sum.hessian.row(last).head(last) = with_theta;
}

Derivatives LifeLikelihood::derivatives(const Eigen::VectorXd& theta) const {
  LifeSums sums{lives_, std::exp(theta[0]), scales_,
                is_shared() ? static_cast<Eigen::Index>(groups()) : 0};
  Totals totals{groups()};
  GroupState group_state;
  group_state.weights = Eigen::ArrayXd::Ones(static_cast<Eigen::Index>(groups()));
  std::vector<LifeAges> kept;
  for (const LifeBlock& block : lives_.blocks()) {
    LifeAges now = ages(block, theta);
    totals.add(lives_.lives(block), now);
    if (is_shared()) {
      kept.push_back(std::move(now));  // until all of a group's hazard is known, and so its weight
    } else {
      sums.add(block, now, group_state);
    }
  }
  totals.end();
  const auto terms = group_terms(totals, theta);
  group_state.hazards = totals.hazards;
  std::ranges::transform(terms, group_state.weights.begin(), &MultiplierTerms::mean);
  for (std::size_t b = 0; b < kept.size(); ++b) sums.add(lives_.blocks()[b], kept[b], group_state);

  Derivatives sum{value_of(totals, terms, theta), Eigen::VectorXd::Zero(parameters()),
                  Eigen::MatrixXd::Zero(parameters(), parameters())};
  const Eigen::Index inner = sums.gradient().size();
  sum.gradient.head(inner) = sums.gradient();
  sum.gradient.tail(parameters() - 1 - scales_).head(factors_) += factors_at_wear_endings_;
  sum.hessian.topLeftCorner(inner, inner) = sums.hessian();
  if (is_shared()) add_groups(terms, sums.group_gradients(), theta, sum);
  sum.hessian = sum.hessian.selfadjointView<Eigen::Lower>().toDenseMatrix();
  return sum;
}

Eigen::VectorXd LifeLikelihood::start_near(const Eigen::VectorXd& theta) const {
  // Logs of the sums of exp(h) over the lives of each scale, beginning with the ending at the
  // scale, of h = 0.
  Eigen::VectorXd log_sums = Eigen::VectorXd::Zero(scales_);
  Eigen::VectorXd endings = Eigen::VectorXd::Ones(scales_);
  for (const LifeBlock& block : lives_.blocks()) {
    const Eigen::ArrayXd h = ages(block, theta).h;
    Eigen::Index i = 0;
    for (const LifeFacts& life : lives_.lives(block)) {
      if (life.sign > 0) log_sums[life.scale] = log_add(log_sums[life.scale], h[i]);
      endings[life.scale] += life.endings;
      ++i;
    }
  }
  Eigen::VectorXd start = theta;
  start.segment(1, scales_).array() +=
      (log_sums.array() - endings.array().log()) / std::exp(theta[0]);
  return start;
}

}  // namespace sparewell::wear
