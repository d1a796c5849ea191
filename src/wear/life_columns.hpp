/// Lives and the spans they were worn in, kept in columns so that each step of the likelihood is
/// one operation on a whole column.
#pragma once

#include <span>
#include <vector>

#include <Eigen/Core>

namespace sparewell::wear {

using ConstColumn = Eigen::Map<const Eigen::ArrayXd>;

/// What the likelihood knows of a life beside its spans.
struct LifeFacts {
  Eigen::Index scale = 0;
  Eigen::Index group = 0;
  double worn_out = 0;  ///< 1, or 0 for a censored life
  double sign = 1;      ///< of its hazard; -1 for the part of a life before it entered the records
};

class LifeColumns {
 public:
  explicit LifeColumns(Eigen::Index factors) : factors_(static_cast<std::size_t>(factors)) {}

  void reserve(std::size_t lives);
  /// Logs of the days worn under each set of factors; these one after another.
  void add(const LifeFacts& life, std::span<const double> log_days,
           std::span<const double> factors);

  [[nodiscard]] Eigen::Index lives() const { return static_cast<Eigen::Index>(sign_.size()); }
  [[nodiscard]] Eigen::Index spans() const { return static_cast<Eigen::Index>(log_days_.size()); }
  [[nodiscard]] Eigen::Index factors() const { return static_cast<Eigen::Index>(factors_.size()); }
  [[nodiscard]] bool has_one_span_a_life() const { return lives() == spans(); }

  /// One entry a life. Its spans follow those of the life before.
  [[nodiscard]] const std::vector<Eigen::Index>& spans_of() const { return spans_of_; }
  [[nodiscard]] const std::vector<Eigen::Index>& scale() const { return scale_; }
  [[nodiscard]] const std::vector<Eigen::Index>& group() const { return group_; }
  [[nodiscard]] ConstColumn worn_out() const { return {worn_out_.data(), lives()}; }
  [[nodiscard]] ConstColumn sign() const { return {sign_.data(), lives()}; }
  /// One entry a span.
  [[nodiscard]] ConstColumn log_days() const { return {log_days_.data(), spans()}; }
  [[nodiscard]] ConstColumn factor(Eigen::Index number) const {
    return {factors_[static_cast<std::size_t>(number)].data(), spans()};
  }

 private:
  std::vector<Eigen::Index> spans_of_;
  std::vector<Eigen::Index> scale_;
  std::vector<Eigen::Index> group_;
  std::vector<double> worn_out_;
  std::vector<double> sign_;
  std::vector<double> log_days_;
  std::vector<std::vector<double>> factors_;
};

/// The lives at one set of parameters, of wear ages x = sum of days * exp(beta . z).
struct LifeAges {
  Eigen::ArrayXd h;       ///< shape (log x - log scale), one entry a life
  Eigen::ArrayXd hazard;  ///< exp(h) with its sign
  double of_endings = 0;  ///< sum over the lives that wore out of h - log x
  /// What each span gave to the wear age of its life; empty when all lives have one span.
  Eigen::ArrayXd part;
};
[[nodiscard]] LifeAges life_ages(const LifeColumns& lives, double shape,
                                 const Eigen::VectorXd& log_scales, const Eigen::VectorXd& beta);

}  // namespace sparewell::wear
