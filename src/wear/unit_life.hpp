/// The remaining life of one unit in use, seen from today.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "clinic/clinic.hpp"
#include "wear/averaged_hazard.hpp"
#include "wear/kind_life.hpp"
#include "wear/other_endings.hpp"
#include "wear/shared_multiplier.hpp"

namespace sparewell::wear {

/// Wear rate from a date on, in days of reference use a day: share * exp(beta . z).
struct RateSpan {
  Date from;
  double rate = 0;
};

/// P(X > x | X > wear age today) with X ~ Weibull(shape, scale), and the calendar that turns dates
/// into wear. Dates are moments a day apart: today is over, and wear goes on from its end.
///
/// The hazard is multiplied by the person's Z, of which is known what the history up to today says:
/// Gamma(a, b), b with this unit's own hazard so far. With the further hazard
/// dH = ((x + further) / scale)^shape - (x / scale)^shape the chance is 1 - (b / (b + dH))^a.
///
/// The law itself is known only so well: averaged over the laws that are possible (see
/// averaged_over) chances and dates are spread as far as both the unit and the law leave open.
class UnitLife {
 public:
  /// `future` covers today onwards: its first span starts on or before `today`, spans are in order
  /// of date, and the last goes on for ever. Throws std::invalid_argument when that is not so, or
  /// when the wear age is negative or the shape or scale not above 0. `person` is the posterior of
  /// the person's multiplier, this unit's own wear so far included; by default it is exactly 1.
  UnitLife(Date today, double wear_age_days, double shape, double scale_days,
           std::vector<RateSpan> future, Multiplier person = {});

  /// The same unit with its chance to last averaged over possible laws, one entry each of `lives`,
  /// with a column of rates for every span of `future`. Wear age, shape, scale and person stay
  /// those of the best estimate. Precondition: one law at least.
  [[nodiscard]] UnitLife averaged_over(const PossibleLives& lives) const;

  /// The first to be worn out of so many units like this one, worn alike by the same person: its
  /// hazard is theirs together. What is not known of the law enters as for one unit.
  [[nodiscard]] UnitLife first_of(int units) const;

  /// The same unit at the end of a later day, seen to have lasted until then: older, and the person
  /// known to be so much gentler. By the best estimate of the law alone. Precondition: not before
  /// today.
  [[nodiscard]] UnitLife having_lasted_until(Date day) const;

  [[nodiscard]] Date today() const { return today_; }
  [[nodiscard]] double wear_age_days() const { return wear_age_; }
  [[nodiscard]] double shape() const { return shape_; }
  [[nodiscard]] double scale_days() const { return scale_; }
  [[nodiscard]] const Multiplier& person() const { return person_; }
  /// The scale at the posterior mean of the person's multiplier: scale * mean^(-1 / shape).
  [[nodiscard]] double person_scale_days() const;
  /// Days of reference use from the end of today to the end of `until`; zero for today and before.
  /// By the best estimate, as are all figures in wear below.
  [[nodiscard]] double wear_until(Date until) const;
  /// Days of reference use in the `days` >= 0 days, a whole number or not, after the end of today.
  [[nodiscard]] double wear_in(double days) const;
  /// True when the rate of wear changes between so many days after the end of today and so many.
  [[nodiscard]] bool changes_between(double from_days, double to_days) const;
  /// Cumulative hazard of `further` more days of reference use for a person whose multiplier is 1;
  /// by the best estimate.
  [[nodiscard]] double baseline_hazard(double further) const;
  /// Chance that it wears out by the time it has seen `further` more days of reference use.
  [[nodiscard]] double chance_at_wear(double further) const;
  /// Days after the end of today at which `further` days of reference use are reached; infinite
  /// when they never are.
  [[nodiscard]] double days_for_wear(double further) const;
  /// Chance that it is worn out `days` after the end of today, a whole number or not.
  [[nodiscard]] double chance_after(double days) const;
  /// Chance that it is worn out by the end of `day`, given that it is in use today; 0 to 1.
  [[nodiscard]] double chance_worn_by(Date day) const;
  /// First day by whose end the chance reaches `p`, 0 < p < 1. Empty when that day lies more than
  /// a hundred years ahead, as for a unit that lies in a drawer and does not age.
  [[nodiscard]] std::optional<Date> worn_out_date(double p) const;

 private:
  /// Of the `days` after the end of today, those within a span of the future.
  [[nodiscard]] double days_within(std::size_t span, double days) const;
  /// -log of the chance to last for `further` > 0 days of reference use; once by the best estimate.
  [[nodiscard]] double best_hazard(double further) const;
  [[nodiscard]] double hazard(double further) const;
  /// The wear from today at which best_hazard is `mixed`.
  [[nodiscard]] double best_wear(double mixed) const;
  /// The wear from today at which the chance is `p`.
  [[nodiscard]] double further_wear(double p) const;

  Date today_;
  double wear_age_;
  double shape_;
  double scale_;
  std::vector<RateSpan> future_;
  Multiplier person_;
  std::optional<AveragedHazard> averaged_;
};

/// The chances by which a remaining life is commonly told.
inline constexpr std::array<double, 7> standard_chances{0.05, 0.10, 0.25, 0.50, 0.75, 0.90, 0.95};
using WornOutDates = std::array<std::optional<Date>, standard_chances.size()>;

/// worn_out_date of each of standard_chances.
[[nodiscard]] WornOutDates worn_out_dates(const UnitLife& life);

/// A unit in use with its remaining life. `unit` is a position in Clinic::units.
struct LifeOfUnit {
  std::size_t unit = 0;
  UnitLife life;
  OtherEndings others = {};  ///< of its kind: the same for all units of one item
  /// Standard deviation of the log of what all units of the item in use are expected to need in the
  /// next weeks, which the law that is not known exactly leaves open; the same for all of them.
  double law_spread = 0;
  /// The item that follows when it is replaced; empty: its own.
  std::optional<ItemCode> next_item = {};
  /// The last day on which the patient is foreseen to need the same item again, because the limb is
  /// then likelier than not outside its size; empty: not foreseen to end. What the patient needs
  /// after it is left open.
  std::optional<Date> needed_until = {};
};

/// Every unit in use at the end of `today` (of items that the catalogue knows), in the order of
/// Clinic::units. Usage recorded for later dates applies from then on; units that alternate today
/// go on alternating as today. Each carries the multiplier that all the patient's units of its
/// kind, worn by today and in the records, tell of, and is averaged over the draws of its kind,
/// where `fitted` has any. Throws std::out_of_range when `fitted` lacks
/// the kind or material of one of these units, which it has when it was fitted with the same
/// catalogue.
[[nodiscard]] std::vector<LifeOfUnit> lives_of_units_in_use(const Clinic& clinic,
                                                            const ClinicLife& fitted, Date today);

}  // namespace sparewell::wear
