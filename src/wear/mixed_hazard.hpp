/// The remaining life of one unit averaged over the laws that are possible for it.
#pragma once

#include <memory>
#include <vector>

#include "wear/law_draws.hpp"

namespace sparewell::wear {

/// One unit under each of several laws; an entry of every array is one law.
struct PossibleLives {
  LawArray wear_age;  ///< today, in days of reference use under that law's factor effects
  LawArray shape;
  LawArray log_scale;
  /// The person's multiplier is Gamma(person_shape, person_rate).
  LawArray person_shape;
  LawArray person_rate;
  Eigen::ArrayXXd rates;  ///< days of reference use a day, a column for each span of the future

  [[nodiscard]] Eigen::Index count() const { return shape.size(); }
};

/// M(w) = -log of the chance to last, averaged over the laws with equal weight, as a function of the
/// wear w to come counted by the best estimate; w only serves as a clock that all laws share.
///
/// Computed at 32 points and interpolated between them: log M as a function of log w is nearly
/// straight, with a slope from 1 for a worn unit to the shape for a fresh one, so a monotone cubic
/// (PCHIP) through the points is within about 1e-4 of the chance; beyond them it goes on straight.
class MixedHazard {
 public:
  /// A point in time: the wear by then, and the days spent in each span of the future.
  struct Point {
    double wear = 0;
    Eigen::ArrayXd span_days;
  };

  /// Points in rising order of wear above 0, four at least.
  MixedHazard(const PossibleLives& lives, const std::vector<Point>& points);

  /// wear > 0.
  [[nodiscard]] double at(double wear) const;
  /// The wear at which it is `hazard` > 0.
  [[nodiscard]] double wear_at(double hazard) const;

 private:
  struct Curve;
  std::shared_ptr<const Curve> curve_;  // never changes, so copies of a life share it
};

}  // namespace sparewell::wear
