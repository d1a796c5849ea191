/// The likelihood of lives under the wear model: the one kernel of the clinic fit and of the plain
/// Weibull regression.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include <Eigen/Core>

#include "wear/life_columns.hpp"
#include "wear/life_sums.hpp"
#include "wear/newton.hpp"
#include "wear/shared_multiplier.hpp"

namespace sparewell::wear {

/// One life as the likelihood sees it.
struct ObservedLife {
  std::size_t scale = 0;             ///< which scale parameter it has
  bool worn_out = false;             ///< otherwise right-censored
  std::span<const double> log_days;  ///< worn under each set of factors; at least one
  std::span<const double> factors;   ///< z of each, one after another
  std::span<const double> at_end;    ///< z when it ended
  std::size_t group = 0;             ///< whose multiplier it shares; counted from 0
  /// The same before it entered the records, to which it is known to have lasted (left
  /// truncation); empty when it was seen from the start.
  std::span<const double> entry_log_days{};
  std::span<const double> entry_factors{};
};

/// Whether lives share a multiplier on the hazard within their group.
enum class Grouping { none, shared_multiplier };

/// Log-likelihood of theta = (log shape k, log scales lambda, beta). With the wear age
/// x = sum of days * exp(beta . z) a life adds
///   log k - log lambda + (k - 1) log(x / lambda) + beta . z(end) - (x / lambda)^k  if it wore out
///   -(x / lambda)^k                                                            if it is censored
/// which is the Weibull density of x times dx/dt at the end, but for the constant log share. With
/// one span a life it is an ordinary Weibull accelerated-failure-time model with coefficients
/// -beta.
///
/// With a shared multiplier theta ends with one more parameter, the log of the multiplier's
/// variance, and -(x / lambda)^k summed over a group is replaced by the marginal over its Gamma
/// (see shared_multiplier.hpp). As the variance goes to 0 the two become the same.
///
/// A left-truncated life adds (x_entry / lambda)^k more: it was only seen because it had lasted to
/// x_entry. Of its hazard only the part since then counts, for the multiplier too: people are in
/// the records whatever their multiplier, because whoever wears out a part gets the next one.
class LifeLikelihood final : public Objective {
 public:
  LifeLikelihood(std::size_t scales, std::size_t factors, Grouping grouping = Grouping::none);

  void add(const ObservedLife& life);
  /// Makes room for so many lives of one span each.
  void reserve(std::size_t lives) { lives_.reserve(lives); }

  [[nodiscard]] std::size_t lives() const { return observed_; }
  [[nodiscard]] std::size_t wear_endings() const { return wear_endings_; }
  [[nodiscard]] std::size_t groups() const { return group_endings_.size(); }
  [[nodiscard]] bool is_shared() const { return grouping_ == Grouping::shared_multiplier; }
  [[nodiscard]] Eigen::Index parameters() const {
    return 1 + scales_ + factors_ + (is_shared() ? 1 : 0);
  }

  [[nodiscard]] double value(const Eigen::VectorXd& theta) const override;
  [[nodiscard]] Derivatives derivatives(const Eigen::VectorXd& theta) const override;

  /// Scale parameters (as logs) that would be best for the shape and beta of `theta` alone, each
  /// with one more wear ending at its scale in `theta`: a place from where the search converges.
  [[nodiscard]] Eigen::VectorXd start_near(const Eigen::VectorXd& theta) const;

 private:
  struct Totals;

  [[nodiscard]] LifeAges ages(const LifeBlock& block, const Eigen::VectorXd& theta) const;
  [[nodiscard]] double theta_of_groups(const Eigen::VectorXd& theta) const;
  [[nodiscard]] std::vector<MultiplierTerms> group_terms(const Totals& totals,
                                                         const Eigen::VectorXd& theta) const;
  [[nodiscard]] double value_of(const Totals& totals, const std::vector<MultiplierTerms>& groups,
                                const Eigen::VectorXd& theta) const;
  void add_groups(const std::vector<MultiplierTerms>& groups,
                  const std::vector<SparseGradient>& group_gradients, const Eigen::VectorXd& theta,
                  Derivatives& sum) const;

  Eigen::Index scales_;
  Eigen::Index factors_;
  Grouping grouping_;
  std::size_t observed_ = 0;
  std::size_t wear_endings_ = 0;
  LifeColumns lives_;                        ///< the part of a life before its entry is one more
  Eigen::VectorXd factors_at_wear_endings_;  ///< summed over the lives
  std::vector<std::size_t> group_endings_;   ///< wear endings of each group
  EndingCounts ending_counts_;
};

}  // namespace sparewell::wear
