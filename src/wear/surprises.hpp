/// Units that wore out far earlier than expected, and lots and items with more early endings than
/// chance explains.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"
#include "wear/clinic_fit.hpp"

namespace sparewell::wear {

/// A unit that wore out is listed when the chance to wear out so early is below this.
inline constexpr double surprising_chance = 0.01;
/// A unit that wore out before the age that one in ten does not reach counts as an early ending of
/// its lot. One in ten leaves enough endings to count in a lot of a few units, and is still far
/// from an ordinary life.
inline constexpr double early_chance = 0.10;
/// False discovery rate among the lots, and among the items, that are flagged.
inline constexpr double false_discovery_rate = 0.05;
inline constexpr double rest_significance = 0.05;
/// A flag needs as many early endings, and of two patients: the early endings of one patient say as
/// much about the patient as about the part. Lots of fewer units are not tested.
inline constexpr int fewest_early = 3;
inline constexpr int fewest_early_patients = 2;

/// `unit` is a position in Clinic::units. Ages are days of reference use.
struct EarlyUnit {
  std::size_t unit = 0;
  double wear_age_days = 0;  ///< when it ended
  double median_days = 0;    ///< that half of its kind and material reach
  double chance = 0;         ///< to wear out at this age or before
};

/// The units of one lot of an item, or of one item, that were worn at all.
struct EarlyEndings {
  ItemCode item;
  std::string lot;  ///< "" when all lots of the item are meant
  int units = 0;
  int early = 0;           ///< worn out early, see early_chance
  int patients = 0;        ///< who had the units
  int early_patients = 0;  ///< of these, with an early ending
  double expected = 0;     ///< early endings expected by chance
  double p_value = 1;      ///< chance of as many early endings or more, were the parts ordinary
  double adjusted_p = 1;   ///< for the number of lots or items tested
  /// p_value of what is left without the patient who had the most early endings.
  double p_without_hardest_user = 1;
  bool flagged = false;  ///< see find_surprises
};

struct Surprises {
  std::vector<EarlyUnit> units;     ///< least chance first
  double units_by_chance = 0;       ///< how many of them chance alone would put there
  std::vector<EarlyEndings> lots;   ///< tested; least p value first
  std::vector<EarlyEndings> items;  ///< likewise
  int lots_too_small = 0;           ///< with fewer than fewest_early units: not judged
  int units_without_lot = 0;        ///< that no lot test could see

  [[nodiscard]] bool any_flagged() const;
};

/// The state of `clinic` at the end of `today`, by the clinic's own law: X ~ Weibull(shape, scale
/// of the material) in wear age, given the age at which it entered the records, and without what its
/// item is known for, which would hide a bad item. The law is fitted to the very units it judges; one
/// unit among many hardly moves it, and what it moves makes surprises rarer, not more frequent.
///
/// The test of a lot is exact. Each unit had a chance of min(early_chance, P(X <= a)) to end early
/// at a multiplier of 1, a being the wear age it could reach: its wear age today, or when it ended
/// otherwise than by wear; for one that wore out, what it would have reached by today had it gone
/// on. A lot in use for a short time is thus judged by what it could show. The units of one patient
/// share the patient's multiplier, over which the number of early endings is mixed (see
/// early_counts.hpp): a hard user with many units makes many early endings likelier. Where the whole
/// kind had more early endings than its law says, as many are expected of every lot of it: a lot is
/// looked at beside the others, and no law fits its early tail to the last percent. P values are
/// adjusted for the number of lots, or of items, tested.
///
/// A user harder than any multiplier would still make a lot look bad, so a flag also needs the rest
/// of the lot, without the patient who had the most early endings, to have more of them than chance
/// brings (p at most rest_significance).
///
/// Throws std::out_of_range when `fitted` lacks a kind or material of a unit.
[[nodiscard]] Surprises find_surprises(const Clinic& clinic, const ClinicLife& fitted, Date today);

}  // namespace sparewell::wear
