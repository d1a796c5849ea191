/// Lives and the spans they were worn in, in columns and cut into blocks, so that the likelihood
/// takes each of its steps for many lives at once.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include <Eigen/Core>

namespace sparewell::wear {

/// What the likelihood knows of a life beside its spans.
struct LifeFacts {
  std::int32_t scale = 0;
  std::int32_t group = 0;
  std::int32_t spans = 1;
  std::int8_t endings = 0;  ///< 1 when it wore out, 0 when it was censored
  /// Of its hazard: -1 for the part of a life before it entered the records.
  std::int8_t sign = 1;
};

/// Consecutive lives with their consecutive spans.
struct LifeBlock {
  Eigen::Index first = 0;
  Eigen::Index lives = 0;
  Eigen::Index first_span = 0;
  Eigen::Index spans = 0;

  [[nodiscard]] bool has_one_span_a_life() const { return lives == spans; }
};

class LifeColumns {
 public:
  using Column = Eigen::Map<const Eigen::ArrayXd>;

  explicit LifeColumns(Eigen::Index factors) : factors_(static_cast<std::size_t>(factors)) {}

  /// Makes room for so many lives of one span each.
  void reserve(std::size_t lives);
  /// Logs of the days worn under each set of factors; these one after another.
  void add(LifeFacts life, std::span<const double> log_days, std::span<const double> factors);

  [[nodiscard]] const std::vector<LifeBlock>& blocks() const { return blocks_; }
  [[nodiscard]] Eigen::Index factors() const { return static_cast<Eigen::Index>(factors_.size()); }
  [[nodiscard]] std::span<const LifeFacts> lives(const LifeBlock& block) const;
  [[nodiscard]] Column log_days(const LifeBlock& block) const;
  [[nodiscard]] Column factor(const LifeBlock& block, Eigen::Index number) const;

 private:
  std::vector<LifeBlock> blocks_;
  std::vector<LifeFacts> lives_;
  std::vector<double> log_days_;              ///< of each span
  std::vector<std::vector<double>> factors_;  ///< likewise, one column a factor
};

/// Where the lives of a block stand at one set of parameters, with wear ages
/// x = sum of days * exp(beta . z).
struct LifeAges {
  Eigen::ArrayXd h;       ///< shape (log x - log scale) of each life
  Eigen::ArrayXd hazard;  ///< exp(h) with its sign
  double of_endings = 0;  ///< sum over the lives that wore out of h - log x
  /// What each span gave to the wear age of its life; empty when all lives have one span.
  Eigen::ArrayXd part;
};
[[nodiscard]] LifeAges life_ages(const LifeColumns& columns, const LifeBlock& block, double shape,
                                 const Eigen::Ref<const Eigen::VectorXd>& log_scales,
                                 const Eigen::Ref<const Eigen::VectorXd>& beta);

}  // namespace sparewell::wear
