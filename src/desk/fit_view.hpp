/// What is known of the fit of everything that a patient wears, now and on a day to come.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "care/fit.hpp"
#include "care/sock_history.hpp"
#include "desk/issue_check.hpp"
#include "desk/limb_forecast.hpp"

namespace sparewell::desk {

/// The day of a question about the fit, where none is given: half a year ahead (our choice).
inline constexpr int fit_days = 182;

/// Units of one item with a size that a patient has in use on one side.
struct FitPart {
  PatientRef patient;
  Side side = Side::left;
  Item item;
  int units = 1;
  std::vector<care::LimbReading> readings;  ///< at the height of the size
  care::FitCheck check;
  std::optional<care::LimbTrend> trend;  ///< empty without a reading
  // By the trend:
  Date by;
  std::optional<care::LimbPrediction> predicted;  ///< on `by`
  double chance_below = 0;                        ///< of the range, on `by`
  double chance_above = 0;
  /// The first day on which the limb is more likely outside than not; today when it is already.
  std::optional<Date> likely_outside;
  /// The size of the same part that suits the limb: as measured, where that is outside the range
  /// and fresh, otherwise as foreseen on `by` where that is outside.
  std::optional<ItemCode> next;
  bool next_conflicts = false;  ///< with a recorded sensitivity
  int next_on_hand = 0;         ///< usable pieces that are promised to nobody else
  bool wants_next = false;      ///< the limb is or will be outside, whether `next` is there or not

  [[nodiscard]] double chance_outside() const;
  /// By a measurement that is not old, and by more than a tape's error.
  [[nodiscard]] bool outside_now() const;
};

struct SockFinding {
  Side side = Side::left;
  care::SockSign sign;
};

struct FitReport {
  PatientRef patient;
  Date today;
  Date by;
  std::vector<FitPart> parts;  ///< left side first, by item code
  std::vector<SockFinding> socks;
  bool measured = false;  ///< anything is, on a side that is asked about
};

/// Of one patient, or of one of their sides. Precondition: `by` is not before `today`.
[[nodiscard]] FitReport fit_report(const Clinic& clinic, const PatientRef& patient,
                                   std::optional<Side> side, Date by, Date today);

struct LeavingParts {
  /// Those that are outside now first, then the likeliest to be.
  std::vector<FitPart> parts;
  /// Further parts, one for each patient, side and item, of which no measurement tells anything.
  int not_known = 0;
};

/// Of all patients, the parts whose limb is outside the size now, or more likely than not by the
/// day.
[[nodiscard]] LeavingParts leaving_parts(const Clinic& clinic, Date by, Date today);

/// What the checks of today do not say of a patient's sizes: limbs that will more likely than not
/// leave one within leaving_soon_days ("size_leaving"), and thicker socks ("sock_sign").
struct LimbFinding {
  Side side = Side::left;
  ItemCode item;  ///< "" for the socks
  IssueFinding finding;
};
[[nodiscard]] std::vector<LimbFinding> limb_findings(const Clinic& clinic,
                                                     const PatientRef& patient, Date today);
inline constexpr int leaving_soon_days = 90;

}  // namespace sparewell::desk
