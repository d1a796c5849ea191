/// How the circumference of a residual limb changes, and where it will be.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "care/circumference.hpp"
#include "care/robust_line.hpp"
#include "clinic/item.hpp"

namespace sparewell::care {

/// Days before a prosthesis is delivered whose measurements belong to it: it was cast and built
/// from them (common practice, no source).
inline constexpr int casting_days = 28;
/// A change is not foreseen further ahead (our choice).
inline constexpr int most_foreseen_days = 3 * 365;

/// Beyond rounding: a limb that was read at the very end of a range is as likely inside.
[[nodiscard]] inline bool likelier_than_not(double chance) {
  return chance > 0.5 + 1e-4;
}

struct LimbPrediction {
  double circumference_cm = 0;  ///< as likely below as above
  double low_cm = 0;
  double high_cm = 0;
};

/// The log of the circumference along a robust line (robust_line.hpp): over ln(weeks) while the
/// prosthesis in use is preparatory, weeks counted from its delivery, which is in week 1; over years
/// otherwise.
///
/// The true circumference on a day is that line and the limb's own ups and downs about it, which
/// is what the readings vary by beyond the tape's own error: sigma^2 - tape_error^2, not below 0.
/// Deviations are taken as Student's t with RobustLine::freedom_at, because sigma is told by few
/// readings.
///
/// Priors, so that one reading already gives a wide answer:
/// - preparatory: volume falls by 9.7 % of that at first per ln(week), n = 21, transtibial (JRRD
///   2014;51(7):1119-1126). A limb that keeps length and shape in proportion has a volume as its
///   circumference squared: ln c = ln(1 - 0.097 ln w) / 2, which falls by 0.0485 per ln(week) in
///   the first week. The study counted weeks from the amputation, which is not recorded here, and
///   found circumferences to follow the volume badly; the standard deviation of 0.03 leaves that
///   open (our choice).
/// - otherwise neither way, standard deviation 2 % a year (common practice, no source).
/// - scatter: the tape's error and 1 % of the limb's own, weighed as four readings (our choice; two
///   weeks apart volumes differed by -2.0 % to +12.6 % in six limbs, JRRD 2004;41(5):683-694).
class LimbTrend {
 public:
  LimbTrend(bool preparatory, Date origin, std::vector<LimbReading> readings, RobustLine line);

  [[nodiscard]] bool preparatory() const { return preparatory_; }
  /// The readings that it was made from, in order of date; one at least.
  [[nodiscard]] const std::vector<LimbReading>& readings() const { return readings_; }
  [[nodiscard]] const RobustLine& line() const { return line_; }
  /// ln(weeks) or years on that day.
  [[nodiscard]] double moment(Date day) const;
  /// Part by which the circumference changes in a year, or from each week to one 2.718 times as
  /// late; below 0 when it shrinks.
  [[nodiscard]] double change() const;
  /// Of change(), the lower and the upper end of the central interval with chance 0.8.
  [[nodiscard]] std::pair<double, double> change_between() const;
  /// The true circumference on `day`, with a central interval that holds it with chance `inner`.
  [[nodiscard]] LimbPrediction on(Date day, double inner = 0.8) const;
  /// Chances that the true circumference on `day` is below or above this.
  [[nodiscard]] double chance_below(double cm, Date day) const;
  [[nodiscard]] double chance_above(double cm, Date day) const;
  /// That it is outside the item's range; 0 for an item without one.
  [[nodiscard]] double chance_outside(const Item& item, Date day) const;
  /// The first day after `from` on which the limb is more likely outside the range than not; empty
  /// when that is not within most_foreseen_days.
  [[nodiscard]] std::optional<Date> likely_outside(const Item& item, Date from) const;
  /// The first day after `from` on which the circumference that is as likely too low as too high is
  /// outside the range, so that it is known on which side; empty likewise. Hardly ever before
  /// likely_outside, and quick.
  [[nodiscard]] std::optional<Date> leaves(const Item& item, Date from) const;

 private:
  /// Of the log of the circumference, with its degrees of freedom.
  struct Deviation {
    double sd = 0;
    double freedom = 0;
  };
  [[nodiscard]] Deviation deviation(Date day) const;
  /// Chance to lie so far above the middle.
  [[nodiscard]] double chance_beyond(double distance, Date day) const;

  bool preparatory_;
  Date origin_;
  std::vector<LimbReading> readings_;
  RobustLine line_;
};

/// The trend by the readings (readings_at) of the patient's side, in order of date. Under a
/// preparatory prosthesis those since its delivery count, otherwise those since the first delivery
/// after the last preparatory one, casting_days before it included; where there is none yet, the
/// last one before. Without a recorded prosthesis all count, as under a definitive one. Empty
/// without a reading.
[[nodiscard]] std::optional<LimbTrend> limb_trend(std::span<const Prosthesis> prostheses,
                                                  const PatientRef& patient, Side side,
                                                  const std::vector<LimbReading>& readings,
                                                  Date day);

}  // namespace sparewell::care
