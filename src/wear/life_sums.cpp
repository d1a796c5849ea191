#include "wear/life_sums.hpp"

#include <algorithm>

namespace sparewell::wear {

using Eigen::ArrayXd;
using Eigen::Index;

namespace {

constexpr std::size_t usual_scales = 4;  // items of one kind that a person has worn

}  // namespace

LifeSums::LifeSums(const LifeColumns& columns, double shape, Index scales, Index groups)
    : columns_{columns},
      shape_{shape},
      first_factor_{1 + scales},
      gradient_{Eigen::VectorXd::Zero(1 + scales + columns.factors())},
      hessian_{Eigen::MatrixXd::Zero(gradient_.size(), gradient_.size())},
      group_gradients_(static_cast<std::size_t>(groups)) {
  for (SparseGradient& of_group : group_gradients_) {
    of_group.entries.reserve(static_cast<std::size_t>(1 + columns.factors()) + usual_scales);
    of_group.entries.push_back({0, 0});
    for (Index f = 0; f < columns.factors(); ++f) {
      of_group.entries.push_back({first_factor_ + f, 0});
    }
  }
}

void LifeSums::add(const LifeBlock& block, const LifeAges& ages, const GroupState& groups) {
  find_means(block, ages.part);
  const ArrayXd& h = ages.h;
  ArrayXd d(block.lives);
  ArrayXd weighted(block.lives);
  Index i = 0;
  for (const LifeFacts& life : columns_.lives(block)) {
    d[i] = life.endings;
    weighted[i] = groups.weights[life.group] * ages.hazard[i];
    ++i;
  }
  const ArrayXd excess = d - weighted;
  const ArrayXd by_age = shape_ * excess - d;  // derivative by the log wear age
  const ArrayXd with_shape = shape_ * (excess - weighted * h);
  const ArrayXd with_scale = shape_ * shape_ * weighted;
  gradient_[0] += (excess * h + d).sum();
  hessian_(0, 0) += (excess * h - weighted * h * h).sum();
  for (Index f = 0; f < means_.cols(); ++f) {
    gradient_[first_factor_ + f] += (by_age * means_.col(f)).sum();
    hessian_(first_factor_ + f, 0) += (with_shape * means_.col(f)).sum();
  }
  add_to_scales(block, excess, with_shape, with_scale);
  if (block.has_one_span_a_life()) {
    add_squares(-with_scale, means_);
  } else {
    // The second derivative of the log wear age is the spread of z over the spans around its mean.
    add_squares(-with_scale - by_age, means_);
    add_span_squares(block, ages.part, by_age);
  }
  if (!group_gradients_.empty()) add_to_groups(block, ages, groups.hazards);
}

/// They are the means of z over the spans.
void LifeSums::find_means(const LifeBlock& block, const ArrayXd& part) {
  means_.resize(block.lives, columns_.factors());
  for (Index f = 0; f < means_.cols(); ++f) {
    const auto z = columns_.factor(block, f);
    if (block.has_one_span_a_life()) {
      means_.col(f) = z;
      continue;
    }
    Index span = 0;
    Index i = 0;
    for (const LifeFacts& life : columns_.lives(block)) {
      double mean = 0;
      for (const Index end = span + life.spans; span < end; ++span) mean += part[span] * z[span];
      means_(i++, f) = mean;
    }
  }
}

void LifeSums::add_to_scales(const LifeBlock& block, const ArrayXd& excess,
                             const ArrayXd& with_shape, const ArrayXd& with_scale) {
  if (first_factor_ == 2) {
    // One scale: whole columns go to it.
    gradient_[1] -= shape_ * excess.sum();
    hessian_(1, 0) -= with_shape.sum();
    hessian_(1, 1) -= with_scale.sum();
    for (Index f = 0; f < means_.cols(); ++f) {
      hessian_(2 + f, 1) += (with_scale * means_.col(f)).sum();
    }
    return;
  }
  Index i = 0;
  for (const LifeFacts& life : columns_.lives(block)) {
    const Index scale = 1 + life.scale;
    gradient_[scale] -= shape_ * excess[i];
    hessian_(scale, 0) -= with_shape[i];
    hessian_(scale, scale) -= with_scale[i];
    double* column = &hessian_(0, scale) + first_factor_;
    for (Index f = 0; f < means_.cols(); ++f) column[f] += with_scale[i] * means_(i, f);
    ++i;
  }
}

/// Adds the squares of the rows of z, each times its weight, to the part of beta.
void LifeSums::add_squares(const ArrayXd& weight, const Eigen::ArrayXXd& z) {
  for (Index j = 0; j < z.cols(); ++j) {
    const ArrayXd weighted = weight * z.col(j);
    for (Index i = j; i < z.cols(); ++i) {
      hessian_(first_factor_ + i, first_factor_ + j) += (weighted * z.col(i)).sum();
    }
  }
}

void LifeSums::add_span_squares(const LifeBlock& block, const ArrayXd& part,
                                const ArrayXd& by_age) {
  ArrayXd weight(block.spans);
  Index span = 0;
  Index i = 0;
  for (const LifeFacts& life : columns_.lives(block)) {
    for (const Index end = span + life.spans; span < end; ++span)
      weight[span] = by_age[i] * part[span];
    ++i;
  }
  Eigen::ArrayXXd z(block.spans, columns_.factors());
  for (Index f = 0; f < z.cols(); ++f) z.col(f) = columns_.factor(block, f);
  add_squares(weight, z);
}

void LifeSums::add_to_groups(const LifeBlock& block, const LifeAges& ages, const ArrayXd& hazards) {
  Index i = 0;
  for (const LifeFacts& life : columns_.lives(block)) {
    const double sum = hazards[life.group];
    const double part = sum > 0 ? ages.hazard[i] / sum : 0;
    const double by_age = part * shape_;
    auto& entries = group_gradients_[static_cast<std::size_t>(life.group)].entries;
    entries[0].value += part * ages.h[i];
    for (Index f = 0; f < means_.cols(); ++f) {
      entries[static_cast<std::size_t>(1 + f)].value += by_age * means_(i, f);
    }
    const Index scale = 1 + life.scale;
    auto at = std::find_if(entries.begin() + 1 + means_.cols(), entries.end(),
                           [&](const auto& entry) { return entry.parameter == scale; });
    if (at == entries.end()) at = entries.insert(at, {scale, 0});
    at->value -= by_age;
    ++i;
  }
}

}  // namespace sparewell::wear
