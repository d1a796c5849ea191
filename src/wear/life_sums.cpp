#include "wear/life_sums.hpp"

#include <algorithm>

namespace sparewell::wear {
namespace {

using Eigen::ArrayXd;
using Eigen::Index;

/// So many that a step is worth setting up, so few that their numbers stay in the fastest memory.
constexpr Index lives_at_once = 256;

/// Consecutive lives and their spans.
struct Block {
  Index first;
  Index lives;
  Index first_span;
  Index spans;
};

class Summing {
 public:
  Summing(const LifeColumns& lives, const LifeAges& ages, double shape, Index scales,
          const ArrayXd& weights, bool by_group)
      : lives_{lives},
        ages_{ages},
        shape_{shape},
        weights_{weights},
        by_group_{by_group},
        first_factor_{1 + scales} {
    const Index size = first_factor_ + lives.factors();
    sums_.gradient.setZero(size);
    sums_.hessian.setZero(size, size);
    if (by_group) sums_.group_gradients.setZero(size, weights.size());
  }

  void add(const Block& block) {
    const auto of_block = [&](const auto& column) {
      return column.segment(block.first, block.lives);
    };
    find_means(block);
    const ArrayXd d = of_block(lives_.worn_out());
    const ArrayXd h = of_block(ages_.h);
    const ArrayXd hazard = of_block(ages_.hazard);
    const ArrayXd weighted = hazard * weights_(group_numbers(block));
    const ArrayXd excess = d - weighted;
    sums_.gradient[0] += (excess * h + d).sum();
    sums_.hessian(0, 0) += (excess * h - weighted * h * h).sum();

    const ArrayXd by_age = shape_ * excess - d;  // derivative by the log wear age
    const ArrayXd with_shape = shape_ * (excess - weighted * h);
    const ArrayXd with_scale = shape_ * shape_ * weighted;
    for (Index f = 0; f < lives_.factors(); ++f) {
      sums_.gradient[first_factor_ + f] += (by_age * means_.col(f)).sum();
      sums_.hessian(first_factor_ + f, 0) += (with_shape * means_.col(f)).sum();
    }
    for (Index i = 0; i < block.lives; ++i) {
      add_to_scale(i, lives_.scale()[static_cast<std::size_t>(block.first + i)], shape_ * excess[i],
                   with_shape[i], with_scale[i]);
    }
    if (lives_.has_one_span_a_life()) {
      add_squares(-with_scale, means_);
    } else {
      // The second derivative of the log wear age is the spread of z over the spans around its
      // mean.
      add_squares(-with_scale - by_age, means_);
      add_span_squares(block, by_age);
    }
    if (by_group_) add_to_groups(block, hazard, h);
  }

  LifeSums sums() { return std::move(sums_); }

 private:
  /// Gradients by beta of the log wear age: the mean of z over the spans of each life.
  void find_means(const Block& block) {
    means_.resize(block.lives, lives_.factors());
    for (Index f = 0; f < lives_.factors(); ++f) {
      const auto z = lives_.factor(f).segment(block.first_span, block.spans);
      if (lives_.has_one_span_a_life()) {
        means_.col(f) = z;
        continue;
      }
      const auto part = ages_.part.segment(block.first_span, block.spans);
      Index span = 0;
      for (Index i = 0; i < block.lives; ++i) {
        double mean = 0;
        const Index end = span + spans_of(block, i);
        for (; span < end; ++span) mean += part[span] * z[span];
        means_(i, f) = mean;
      }
    }
  }

  Index spans_of(const Block& block, Index life) const {
    return lives_.spans_of()[static_cast<std::size_t>(block.first + life)];
  }

  Eigen::Map<const Eigen::Array<Index, Eigen::Dynamic, 1>> group_numbers(const Block& block) const {
    return {lives_.group().data() + block.first, block.lives};
  }

  void add_to_scale(Index life, Index scale, double by_scale, double with_shape,
                    double with_scale) {
    sums_.gradient[1 + scale] -= by_scale;
    sums_.hessian(1 + scale, 0) -= with_shape;
    sums_.hessian(1 + scale, 1 + scale) -= with_scale;
    double* column = &sums_.hessian(first_factor_, 1 + scale);
    for (Index f = 0; f < lives_.factors(); ++f) column[f] += with_scale * means_(life, f);
  }

  /// Adds the squares of the rows z, each times its weight, to the part of beta.
  template <class Rows>
  void add_squares(const ArrayXd& weight, const Rows& z) {
    for (Index j = 0; j < z.cols(); ++j) {
      const ArrayXd weighted = weight * z.col(j);
      for (Index i = j; i < z.cols(); ++i) {
        sums_.hessian(first_factor_ + i, first_factor_ + j) += (weighted * z.col(i)).sum();
      }
    }
  }

  void add_span_squares(const Block& block, const ArrayXd& by_age) {
    ArrayXd weight = ages_.part.segment(block.first_span, block.spans);
    Index span = 0;
    for (Index i = 0; i < block.lives; ++i) {
      weight.segment(span, spans_of(block, i)) *= by_age[i];
      span += spans_of(block, i);
    }
    Eigen::ArrayXXd z(block.spans, lives_.factors());
    for (Index f = 0; f < z.cols(); ++f) {
      z.col(f) = lives_.factor(f).segment(block.first_span, block.spans);
    }
    add_squares(weight, z);
  }

  void add_to_groups(const Block& block, const ArrayXd& hazard, const ArrayXd& h) {
    for (Index i = 0; i < block.lives; ++i) {
      const auto life = static_cast<std::size_t>(block.first + i);
      double* gradient = &sums_.group_gradients(0, lives_.group()[life]);
      const double by_age = hazard[i] * shape_;
      gradient[0] += hazard[i] * h[i];
      gradient[1 + lives_.scale()[life]] -= by_age;
      for (Index f = 0; f < lives_.factors(); ++f)
        gradient[first_factor_ + f] += by_age * means_(i, f);
    }
  }

  const LifeColumns& lives_;
  const LifeAges& ages_;
  double shape_;
  const ArrayXd& weights_;
  bool by_group_;
  Index first_factor_;
  Eigen::ArrayXXd means_;  ///< of the block at hand, one life a row
  LifeSums sums_;
};

}  // namespace

LifeSums life_sums(const LifeColumns& lives, const LifeAges& ages, double shape, Index scales,
                   const ArrayXd& weights, bool by_group) {
  Summing summing{lives, ages, shape, scales, weights, by_group};
  Block block{0, 0, 0, 0};
  while (block.first < lives.lives()) {
    block.lives = std::min(lives_at_once, lives.lives() - block.first);
    block.spans = 0;
    for (Index i = block.first; i < block.first + block.lives; ++i) {
      block.spans += lives.spans_of()[static_cast<std::size_t>(i)];
    }
    summing.add(block);
    block.first += block.lives;
    block.first_span += block.spans;
  }
  return summing.sums();
}

}  // namespace sparewell::wear
