/// What can have happened to one unit by moments of an interval.
#pragma once

#include <vector>

#include "supply/renewal.hpp"
#include "wear/multiplier_points.hpp"

namespace sparewell::supply {

/// What can have happened to the unit in so many days.
struct Moment {
  double days = 0;
  double replaced = 0;  ///< P(worn out, lost or recalled by then)
  double loss_hazard = 0;
  double leaving_hazard = 0;
};

[[nodiscard]] Moment moment_after(const wear::UnitLife& life, const wear::OtherEndings& others,
                                  double days);

/// Losses and recalls a day, by the mean of what is known of their rates.
[[nodiscard]] double losses_per_day(const wear::OtherEndings& others);

/// A unit at the ends of equal steps of wear until the end of the interval; of time, when it is not
/// worn at all. Cells are `stride` steps long.
class UnitPath {
 public:
  /// `end` is what the last step leads to, `wear` the wear of the whole interval. `persons` are
  /// values that the person's multiplier may have.
  UnitPath(const wear::UnitLife& life, const wear::OtherEndings& others, const Moment& end,
           double wear, int steps, const std::vector<wear::MultiplierPoint>& persons);

  [[nodiscard]] std::size_t cells(std::size_t stride) const {
    return (replaced_.size() - 1) / stride;
  }
  /// Chance to be replaced for the first time in that cell.
  [[nodiscard]] double replaced_in(std::size_t cell, std::size_t stride) const {
    return replaced_[(cell + 1) * stride] - replaced_[cell * stride];
  }
  /// Of that chance, the part of the person who has that multiplier.
  [[nodiscard]] double replaced_in(std::size_t cell, std::size_t stride, std::size_t person) const;
  /// Chance that nothing has ended the line by the middle of the cell.
  [[nodiscard]] double stays_in(std::size_t cell, std::size_t stride) const {
    return (stays_[cell * stride] + stays_[(cell + 1) * stride]) / 2;
  }

 private:
  std::vector<double> replaced_;  ///< P(worn out, lost or recalled by then)
  std::vector<double> stays_;     ///< P(nothing has ended the line by then)
  std::size_t persons_;
  /// By step and then person: weight of the person times the chance of no replacement so far.
  std::vector<double> kept_;
};

}  // namespace sparewell::supply
